"""The wave solution written plainly in NumPy and SciPy: a check and a yardstick that shares no code with ours.

The same boundary-element model (a rigid surface without thickness, hypersingular equation in the weak form of Maue and
Nedelec, linear triangles, quarter mesh with mirror images), but discretised the straight way: the kernel 1/(4 pi r) once
per geometry, near pairs with the inner integral in closed form, and at every frequency the remainder
(exp(-jkr) - 1)/(4 pi r) at the midpoints of all edges for both terms of the operator, solved by LAPACK.

Run: python3 tests/reference/waves-plain.py > tests/reference/waves-plain.json
Time: python3 tests/reference/waves-plain.py --time [frequencies]   (the reference shell, full mesh, speaker in the middle
and 30 mm off it: seconds to prepare, and for each of so many frequencies, 3 unless told)
"""

import json
import sys
import time

import numpy as np
import scipy
from scipy import sparse
from scipy.linalg import solve

C = 343.2
SIX = [
    (a, w, order)
    for a, w in [(0.445948490915965, 0.223381589678011), (0.091576213509771, 0.109951743655322)]
    for order in range(3)
]


def lines(length, spacing, free):
    zone = 0.4 * length if free else 0.0
    in_zone = zone * 1.7 / spacing
    total = in_zone + (length - zone) / spacing
    n = max(1, int(np.ceil(total - 1e-9)))
    u = (n - np.arange(n + 1)) * total / n
    with np.errstate(divide="ignore", invalid="ignore"):
        d = np.where(u < in_zone, zone * (u / in_zone) ** 1.7 if free else 0, zone + (u - in_zone) * spacing)
    out = length - d
    out[0] = 0.0
    return out


def box_mesh(sides, walls, h):
    """Quarter of a box or shell: the roof in z = 0, normals outward."""
    x = lines(sides[0] / 2, h[0], not walls["ends"])
    y = lines(sides[1] / 2, h[1], not walls["sides"])
    z = lines(sides[2], h[2], not walls["floor"])
    known, points, triangles = {}, [], []

    def node(p):
        key = tuple(np.round(np.array(p) * 1e10).astype(int) + 0)
        if key not in known:
            known[key] = len(points)
            points.append(p)
        return known[key]

    def panel(at, u, v):
        for i in range(len(u) - 1):
            for j in range(len(v) - 1):
                a, b, c, d = (node(at(*p)) for p in [(u[i], v[j]), (u[i + 1], v[j]), (u[i + 1], v[j + 1]), (u[i], v[j + 1])])
                triangles.extend([(a, b, c), (a, c, d)])

    panel(lambda p, q: (p, q, 0.0), x, y)
    if walls["sides"]:
        panel(lambda p, q: (p, sides[1] / 2, -q), x, z)
    if walls["ends"]:
        panel(lambda p, q: (sides[0] / 2, q, -p), z, y)
    if walls["floor"]:
        panel(lambda p, q: (q, p, -sides[2]), y, x)
    return np.array(points), np.array(triangles)


def potential(points, corners, normal):
    """Integral of 1/R over a triangle at many points (D. R. Wilton et al. 1984)."""
    height = np.abs((points - corners[0]) @ normal)
    out = np.zeros(len(points))
    for i in range(3):
        a, b = corners[i], corners[(i + 1) % 3]
        along = (b - a) / np.linalg.norm(b - a)
        outward = np.cross(along, normal)
        p = (a - points) @ outward
        lo, hi = (a - points) @ along, (b - points) @ along
        near, far = np.linalg.norm(a - points, axis=1), np.linalg.norm(b - points, axis=1)
        with np.errstate(divide="ignore", invalid="ignore"):
            log = np.where(lo + hi >= 0, np.log((far + hi) / (near + lo)), np.log((near - lo) / (far - hi)))
            log = np.where(np.abs(p) < 1e-14, 0, log)
        square = p**2 + height**2 + 1e-300
        out += p * log - height * (
            np.arctan(p * hi / (square + height * far)) - np.arctan(p * lo / (square + height * near))
        )
    return out


class Plain:
    def __init__(self, points, triangles, planes=("x", "y")):
        self.points, self.triangles = points, triangles
        corner = points[triangles]
        cross = np.cross(corner[:, 1] - corner[:, 0], corner[:, 2] - corner[:, 0])
        self.area = np.linalg.norm(cross, axis=1) / 2
        self.normal = cross / (2 * self.area[:, None])
        self.curl = np.stack([corner[:, (i + 2) % 3] - corner[:, (i + 1) % 3] for i in range(3)], 1)
        self.curl /= 2 * self.area[:, None, None]
        self.signs = [np.array([sx, sy, 1.0]) for sy in ((1, -1) if "y" in planes else (1,)) for sx in (1, -1)]
        pairs = np.sort(triangles[:, [[1, 2], [2, 0], [0, 1]]], axis=2)
        edges, self.edge_of = np.unique(pairs.reshape(-1, 2), axis=0, return_inverse=True)
        self.edge_of = self.edge_of.reshape(-1, 3)
        self.middle = points[edges].mean(1)
        count = np.bincount(self.edge_of.ravel())
        on_plane = np.any(np.all(points[edges][:, :, :2] == 0, axis=1), axis=1)
        self.free = np.unique(edges[(count == 1) & ~on_plane])
        self.open = len(self.free) > 0
        # per direction: what an edge midpoint carries of hat and of curl
        rows, columns, hats, curls = [], [], [], []
        for t, tri in enumerate(triangles):
            for e in range(3):
                for i in range(3):
                    rows.append(self.edge_of[t, e])
                    columns.append(tri[i])
                    hats.append(self.area[t] / 3 * self.normal[t] * (0 if i == e else 0.5))
                    curls.append(self.area[t] / 3 * self.curl[t, i])
        shape = (len(edges), len(points))
        self.hat = [sparse.csr_matrix((np.array(hats)[:, d], (rows, columns)), shape) for d in range(3)]
        self.curls = [sparse.csr_matrix((np.array(curls)[:, d], (rows, columns)), shape) for d in range(3)]
        self.static()
        self.distance = [np.linalg.norm(self.middle[:, None] - (s * self.middle)[None], axis=2) for s in self.signs]

    def static(self):
        """Integrals of 1/(4 pi r) between triangles, for every image."""
        corner = self.points[self.triangles]
        centre = corner.mean(1)
        longest = np.max(np.linalg.norm(corner - np.roll(corner, 1, axis=1), axis=2), axis=1)
        inner = np.stack(
            [np.roll(np.array([a, a, 1 - 2 * a]), order) @ corner for a, _, order in SIX], axis=1
        )
        weight = np.array([w for _, w, _ in SIX])
        self.v0 = []
        for s in self.signs:
            mid = self.middle[self.edge_of]
            v = np.zeros((len(self.area), len(self.area)))
            with np.errstate(divide="ignore"):
                for e in range(3):
                    for f in range(3):
                        v += 1 / np.linalg.norm(mid[:, e][:, None] - (s * mid[:, f])[None], axis=2) / 9
            far = np.linalg.norm(centre[:, None] - (s * centre)[None], axis=2)
            near = far < 2.2 * (longest[:, None] + longest[None]) / 2
            for t in range(len(self.area)):
                who = np.flatnonzero(near[:, t])
                values = potential((s * inner[who]).reshape(-1, 3), corner[t], self.normal[t]) / self.area[t]
                v[who, t] = values.reshape(-1, 6) @ weight
            v = (v + v.T) / 2
            self.v0.append(v * np.outer(self.area, self.area) / (4 * np.pi))

    def matrix(self, k, characters, static):
        n = len(self.points)
        a = np.zeros((n, n), complex)
        for g, s in enumerate(self.signs):
            r = self.distance[g]
            with np.errstate(divide="ignore", invalid="ignore"):
                kernel = np.where(r > 1e-12, (np.exp(-1j * k * r) - 1) / (4 * np.pi * r), -1j * k / (4 * np.pi))
            det = np.prod(s)
            for d in range(3):
                left = self.hat[d].T @ kernel
                a += characters[g] * k**2 * s[d] * (self.hat[d].T @ left.T).T
                left = self.curls[d].T @ kernel
                a -= characters[g] * det * s[d] * (self.curls[d].T @ left.T).T
        return a + static[0] + k**2 * static[1]

    def static_matrices(self, characters):
        n = len(self.points)
        a0, a1 = np.zeros((n, n)), np.zeros((n, n))
        for g, s in enumerate(self.signs):
            det = np.prod(s)
            dots = np.einsum("sd,td->st", self.normal, s * self.normal)
            for i in range(3):
                for j in range(3):
                    curls = np.einsum("sd,td->st", self.curl[:, i], det * s * self.curl[:, j])
                    at = (self.triangles[:, i][:, None], self.triangles[:, j][None])
                    np.add.at(a0, at, -characters[g] * curls * self.v0[g])
                    np.add.at(a1, at, characters[g] * dots * self.v0[g] / 9)
        return a0, a1

    def characters(self, odd_x):
        return [s[0] if odd_x else 1.0 for s in self.signs]

    def piston(self, a, b, x0, odd_x):
        """Integrals of the hats over an elliptic cone, by a fine midpoint rule."""
        n = 400
        r, f = np.meshgrid((np.arange(n) + 0.5) / n, (np.arange(n) + 0.5) * 2 * np.pi / n)
        x, y, w = x0 + a * r * np.cos(f), b * r * np.sin(f), a * b * r * 2 * np.pi / n**2
        x, y, w = x.ravel(), y.ravel(), w.ravel()
        sign = np.where((x < 0) & odd_x, -1.0, 1.0)
        x, y = np.abs(x), np.abs(y)
        q = np.zeros(len(self.points))
        for t in np.flatnonzero((self.normal[:, 2] > 0.99) & np.all(self.points[self.triangles][:, :, 2] == 0, axis=1)):
            p = self.points[self.triangles[t]][:, :2]
            m = np.linalg.inv(np.vstack([p.T, np.ones(3)]))
            lam = m @ np.vstack([x, y, np.ones(len(x))])
            inside = np.all(lam >= 0, axis=0)
            q[self.triangles[t]] += lam[:, inside] @ (w * sign)[inside]
        return q / len(self.signs)

    def far(self, jumps, k, direction, x0, area):
        total = 0
        for characters, m in jumps:
            for g, s in enumerate(self.signs):
                phase = np.exp(1j * k * ((s * self.middle) @ direction - x0 * direction[0]))
                for d in range(3):
                    total += characters[g] * s[d] * direction[d] * (phase @ (self.hat[d] @ m))
        return 1j * k / (2 * area) * total

    def solve(self, k, cone, x0, statics):
        a, b = cone
        area = np.pi * a * b
        jumps, load = [], 0
        for odd in (False, True) if x0 else (False,):
            characters = self.characters(odd)
            keep = np.setdiff1d(np.arange(len(self.points)), self.free)
            if odd:
                keep = keep[self.points[keep, 0] > 0]
            q = self.pistons[odd]
            matrix = self.matrix(k, characters, statics[odd])[np.ix_(keep, keep)]
            m = np.zeros(len(self.points), complex)
            m[keep] = solve(matrix, -q[keep], assume_a="sym")
            jumps.append((characters, m))
            load += len(self.signs) * (q @ m) / area**2
        return jumps, load

    def prepare(self, cone, x0):
        self.pistons = {odd: self.piston(*cone, x0, odd) for odd in (False, True)}
        return {odd: self.static_matrices(self.characters(odd)) for odd in ((False, True) if x0 else (False,))}


SHELL = ((0.152, 0.03, 0.045), {"sides": True, "ends": True, "floor": False})
OPEN = ((0.12, 0.03, 0.03), {"sides": True, "ends": False, "floor": False})
BOX = ((0.042, 0.029, 0.017), {"sides": True, "ends": True, "floor": True})
CONE = (0.018, 0.011)


def reference():
    cases = []
    for name, (sides, walls), h, x0 in [
        ("shell", SHELL, (0.0036, 0.003, 0.0036), 0.02),
        ("open shell", OPEN, (0.0036, 0.003, 0.0036), 0.04),
        ("box", BOX, (0.002, 0.002, 0.002), 0.0),
    ]:
        plain = Plain(*box_mesh(sides, walls, h))
        statics = plain.prepare(CONE, x0)
        area = np.pi * CONE[0] * CONE[1]
        rows = []
        for f in [100, 1000, 2000, 3000, 5000, 8000]:
            k = 2 * np.pi * f / C
            jumps, load = plain.solve(k, CONE, x0, statics)
            heard = []
            for angle in [0, 60, 120]:
                t = np.radians(angle)
                h_far = plain.far(jumps, k, np.array([np.sin(t), 0, np.cos(t)]), x0, area)
                heard.append({"angleDeg": angle, "re": h_far.real, "im": h_far.imag})
            rows.append({"f": f, "load": {"re": load.real, "im": load.imag}, "heard": heard})
        cases.append({"form": name, "sides": sides, "spacing": h, "offset": x0, "nodes": len(plain.points), "rows": rows})
    print(
        json.dumps(
            {
                "what": "Rigid surfaces with an elliptic cone of 36 x 22 mm in the roof or front, c = 343.2 m/s, no loss: load"
                " Za/(j omega rho) in 1/m and far field in the plane of the length against the endless plate",
                "tool": f"NumPy {np.__version__}, SciPy {scipy.__version__}; waves-plain.py",
                "cone": [0.036, 0.022],
                "cases": cases,
            },
            indent=1,
        )
    )


def timed(count):
    rows = []
    for x0 in (0.0, 0.03):
        start = time.perf_counter()
        plain = Plain(*box_mesh(*SHELL, (0.00528, 0.005, 0.0045)))
        statics = plain.prepare(CONE, x0)
        ready = time.perf_counter()
        for f in np.linspace(100, 10000, count):
            plain.solve(2 * np.pi * f / C, CONE, x0, statics)
        each = (time.perf_counter() - ready) / count
        rows.append({"offset": x0, "nodes": len(plain.points), "prepare": ready - start, "each": each})
    print(json.dumps(rows))


if "--time" in sys.argv:
    timed(int(sys.argv[2]) if len(sys.argv) > 2 else 3)
else:
    reference()
