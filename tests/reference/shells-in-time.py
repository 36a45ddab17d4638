"""Makes shells-in-time.json: shells in free field and over a hard board by finite differences in time.

A method that shares nothing with the boundary elements of src/lib/waves: pressure and velocity on a staggered grid (as K. S. Yee,
IEEE Trans. Antennas Propag. 14 (1966) 302, for sound), leapfrog in time. Thin walls are faces without normal velocity, the cone is
faces of the roof with a given one. A quarter of the mount behind two rigid planes; the board is a rigid plane too. Elsewhere the air
goes on in a convolutional absorbing layer (J. A. Roden and S. D. Gedney, Microw. Opt. Technol. Lett. 27 (2000) 334). No losses.

Pressures (real and imaginary part, e^{+jwt}) over that of an endless plate with the same cone, on its axis at the same distance, less the way of
the sound there, at points 12 cm from the middle of the cone; angles from straight up, or in free field from straight in front. The edges of thin
walls make the error linear in the spacing: grids of 4 and of 2 mm, from which the reader extrapolates, 2·fine − coarse. Pressures, not levels:
in a dip the two grids differ in phase, and their levels say little.

A `chassis` is a floor across the shell at that height over its lower edge, with gaps along its sides and at its ends.

    nice python3 tests/reference/shells-in-time.py [NAME ...]

redoes the named cases, or all. Made with Python 3 and NumPy 2.4.6; two to four minutes a case.
"""

import json
import pathlib
import re
import sys
import time

import numpy as np

FILE = pathlib.Path(__file__).with_suffix(".json")
C = 343.2
DISTANCE = 0.12
LAYER = 0.04
SECONDS = 0.03
FREQUENCY = [150, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1400, 1600, 1800, 2000, 2500, 3150, 4000, 5000, 6300]
LISTENERS = [[0, "width"], [30, "length"], [60, "width"], [60, "length"]]
# width of the pulse of the cone's velocity: 20 dB down at 8 kHz
SIGMA = 43e-6

# Inside sizes of closed-ended shells and rectangular central cones in m; `above` is the height of the lowest part over the board.
CASES = {
    "long, free": {"shell": [0.152, 0.032, 0.04], "cone": [0.032, 0.016]},
    "long, 16 mm above the board": {"shell": [0.152, 0.032, 0.04], "cone": [0.032, 0.016], "above": 0.016, "facing": "up"},
    "short, 8 mm above the board": {"shell": [0.08, 0.048, 0.032], "cone": [0.024, 0.024], "above": 0.008, "facing": "up"},
    "short, roof down, 20 mm above the board": {"shell": [0.08, 0.048, 0.032], "cone": [0.024, 0.024], "above": 0.02, "facing": "down"},
    "short, chassis with gaps of 4 mm, free": {"shell": [0.08, 0.048, 0.032], "cone": [0.024, 0.024], "chassis": {"height": 0.008, "gap": 0.004}},
}


def layer(n_cells, h, dt, at_faces, ends):
    """Decay factors b and a along one axis, 1 and 0 outside of the absorbing layers at the given ends (low, high)."""
    n = n_cells + 1 if at_faces else n_cells
    place = (np.arange(n) + (0 if at_faces else 0.5)) * h
    length = n_cells * h
    depth = np.zeros(n)
    if ends[0]:
        depth = np.maximum(depth, (LAYER - place) / LAYER)
    if ends[1]:
        depth = np.maximum(depth, (place - (length - LAYER)) / LAYER)
    sigma = -4 * C * np.log(1e-6) / (2 * LAYER) * depth**3
    alpha = 2 * np.pi * 150 * (1 - depth)
    b = np.exp(-(sigma + alpha) * dt)
    a = np.where(depth > 0, sigma / (sigma + alpha) * (b - 1), 0)
    return b.astype(np.float32), a.astype(np.float32), depth > 0


class Slab:
    """The part of one axis that lies in an absorbing layer: adds what the layer takes to a difference."""

    def __init__(self, shape, axis, n_cells, h, dt, at_faces, ends):
        b, a, inside = layer(n_cells, h, dt, at_faces, ends)
        if at_faces:
            # the outermost faces never move
            b, a, inside = b[1:-1], a[1:-1], inside[1:-1]
        self.parts = []
        for start, stop in runs(inside):
            index = [slice(None)] * 3
            index[axis] = slice(start, stop)
            form = [1, 1, 1]
            form[axis] = stop - start
            psi = np.zeros([stop - start if d == axis else m for d, m in enumerate(shape)], np.float32)
            self.parts.append((tuple(index), b[start:stop].reshape(form), a[start:stop].reshape(form), psi))

    def add(self, difference):
        for index, b, a, psi in self.parts:
            part = difference[index]
            psi *= b
            psi += a * part
            part += psi


def runs(inside):
    edges = np.flatnonzero(np.diff(np.concatenate([[0], inside.astype(int), [0]])))
    return list(zip(edges[::2], edges[1::2]))


def cubic(x, h):
    """Nodes and weights of the cubic through the four cell middles about x; behind the symmetry plane they are mirrored."""
    first = int(np.floor(x / h - 0.5)) - 1
    nodes = np.arange(first, first + 4)
    t = x / h - 0.5 - nodes
    weights = [np.prod([t[j] / (nodes[i] - nodes[j]) for j in range(4) if j != i]) for i in range(4)]
    return nodes, np.array(weights)


def run(case, h):
    length, width, height = case["shell"]
    board = "above" in case
    down = case.get("facing") == "down"
    count = lambda x: int(round(x / h))
    # the roof's face and the walls' range over the bottom of the grid
    margin = 0.02
    below = (case["above"] if board else margin + LAYER) + (0 if down else height)
    roof = count(below)
    walls = slice(roof, roof + count(height)) if down else slice(roof - count(height), roof)
    cells = [
        count(max(length / 2, DISTANCE) + margin + LAYER),
        count(max(width / 2, DISTANCE) + margin + LAYER),
        count(below + max(DISTANCE, height if down else 0) + margin + LAYER),
    ]
    nx, ny, nz = cells
    s = np.float32(0.95 / np.sqrt(3))
    dt = float(s) * h / C
    ends = [(False, True), (False, True), (not board, True)]
    p = np.zeros(cells, np.float32)
    u = [np.zeros([m + (d == axis) for d, m in enumerate(cells)], np.float32) for axis in range(3)]
    inner = [[m - (d == axis) for d, m in enumerate(cells)] for axis in range(3)]
    at_faces = [Slab(inner[axis], axis, cells[axis], h, dt, True, ends[axis]) for axis in range(3)]
    at_middles = [Slab(cells, axis, cells[axis], h, dt, False, ends[axis]) for axis in range(3)]
    lx, ly = count(length / 2), count(width / 2)
    chassis = case.get("chassis")
    if chassis:
        floor = roof + count(height - chassis["height"]) * (1 if down else -1)
    cx, cy = count(case["cone"][0] / 2), count(case["cone"][1] / 2)

    receivers = []
    for angle, plane in LISTENERS:
        up, aside = DISTANCE * np.cos(np.radians(angle)), DISTANCE * np.sin(np.radians(angle))
        at = [aside if plane == "length" else 0, aside if plane == "width" else 0, below + up]
        places = [cubic(x, h) for x in at]
        nodes = [np.where(n < 0, -1 - n, n) for n, _ in places]
        weights = np.einsum("i,j,k->ijk", *[w for _, w in places])
        receivers.append((np.ix_(*nodes), weights))

    steps = int(SECONDS / dt)
    heard = np.zeros([len(receivers), steps])
    moved = np.zeros(steps)
    start = 5 * SIGMA
    slices = [
        (tuple(slice(1, None) if d == axis else slice(None) for d in range(3)), tuple(slice(None, -1) if d == axis else slice(None) for d in range(3)), tuple(slice(1, -1) if d == axis else slice(None) for d in range(3)))
        for axis in range(3)
    ]
    faces = [np.zeros(shape, np.float32) for shape in inner]
    middles = np.zeros(cells, np.float32)
    for n in range(steps):
        # p at time n·dt, velocities at (n + ½)·dt
        for i, (index, weights) in enumerate(receivers):
            heard[i, n] = np.sum(p[index] * weights)
        for axis, (high, low, within) in enumerate(slices):
            step = faces[axis]
            np.subtract(p[high], p[low], out=step)
            at_faces[axis].add(step)
            step *= s
            u[axis][within] -= step
        velocity = np.exp(-(((n + 0.5) * dt - start) ** 2) / (2 * SIGMA**2))
        moved[n] = velocity
        u[2][:lx, :ly, roof] = 0
        u[2][:cx, :cy, roof] = -velocity if down else velocity
        u[1][:lx, ly, walls] = 0
        u[0][lx, :ly, walls] = 0
        if chassis:
            u[2][: lx - count(chassis["gap"]), : ly - count(chassis["gap"]), floor] = 0
        for axis, (high, low, _) in enumerate(slices):
            np.subtract(u[axis][high], u[axis][low], out=middles)
            at_middles[axis].add(middles)
            middles *= s
            p -= middles

    time_p, time_u = np.arange(steps) * dt, (np.arange(steps) + 0.5) * dt
    area = case["cone"][0] * case["cone"][1]
    pressures = []
    for each in heard:
        row = []
        for f in FREQUENCY:
            w = 2 * np.pi * f
            pressure = np.sum(each * np.exp(-1j * w * time_p))
            # the velocities are times rho·c
            plate = 1j * w * area / (2 * np.pi * DISTANCE * C) * np.sum(moved * np.exp(-1j * w * (time_u + DISTANCE / C)))
            ratio = pressure / plate
            row.append([float(f"{ratio.real:.5g}"), float(f"{ratio.imag:.5g}")])
        pressures.append(row)
    tail = np.max(np.abs(heard[:, -steps // 20 :])) / np.max(np.abs(heard))
    return pressures, tail


def main():
    known = {case["name"]: case for case in json.loads(FILE.read_text())["cases"]} if FILE.exists() else {}
    for name in sys.argv[1:] or CASES:
        case = CASES[name]
        began = time.time()
        coarse, _ = run(case, 0.004)
        fine, tail = run(case, 0.002)
        known[name] = {"name": name, **case, "coarse": coarse, "fine": fine}
        save(known)
        print(f"{name}: {time.time() - began:.0f} s, {20 * np.log10(tail):.0f} dB left at the end")
    save(known)


def save(known):
    out = {
        "source": "tests/reference/shells-in-time.py: finite differences in time, 4 and 2 mm",
        "tool": f"NumPy {np.__version__}",
        "temperatureC": 20,
        "distance": DISTANCE,
        "frequency": FREQUENCY,
        "listeners": LISTENERS,
        "cases": [known[name] for name in CASES if name in known],
    }
    text = json.dumps(out, indent=1)
    # a complex number on one line
    text = re.sub(r"\[\s+(-?[\d.e-]+),\s+(-?[\d.e-]+)\s+\]", r"[\1, \2]", text)
    FILE.write_text(text + "\n")


main()
