import type { ShellMount } from '../../src/lib/acoustics/mounts/mount.js';
import type { Surface } from './geodesic.js';
import { noise } from './noise.js';

/** A mesh builder that joins equal points and pushes points inside a face about, so that no edge lies by luck. */
class Mesh implements Surface {
  readonly points: [number, number, number][] = [];
  readonly triangles: [number, number, number][] = [];
  readonly #known = new Map<string, number>();
  readonly #jitter = noise(100000, 11);
  #used = 0;

  /** A parallelogram from `origin`, spanned by `u` and `v`, of m × n cells. */
  face(origin: number[], u: number[], v: number[], m: number, n: number): void {
    const at = (i: number, j: number, s: number, t: number) =>
      [0, 1, 2].map((k) => origin[k] + (u[k] * (i + s)) / m + (v[k] * (j + t)) / n) as [
        number,
        number,
        number
      ];
    const numbers = Array.from({ length: m + 1 }, (_, i) =>
      Array.from({ length: n + 1 }, (_, j) => {
        const inside = i > 0 && i < m && j > 0 && j < n;
        return this.point(inside ? at(i, j, this.push(), this.push()) : at(i, j, 0, 0));
      })
    );
    for (let i = 0; i < m; i++)
      for (let j = 0; j < n; j++) {
        const [a, b, c, d] = [numbers[i][j], numbers[i + 1][j], numbers[i + 1][j + 1], numbers[i][j + 1]];
        this.triangles.push([a, b, c], [a, c, d]);
      }
  }

  point(p: [number, number, number]): number {
    const key = p.map((x) => Math.round(x * 1e9)).join(' ');
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    this.#known.set(key, this.points.length);
    return this.points.push(p) - 1;
  }

  push(): number {
    return 0.3 * this.#jitter[this.#used++];
  }
}

/** A rectangle with its middle at the origin. */
export function rectangleSurface(length: number, width: number): Surface {
  const mesh = new Mesh();
  mesh.face([-length / 2, -width / 2, 0], [length, 0, 0], [0, width, 0], 15, 11);
  return mesh;
}

/** A disc with its middle at the origin, as a polygon of `corners` corners. */
export function discSurface(diameter: number, corners: number): Surface {
  const mesh = new Mesh();
  const rings = 7;
  const middle = mesh.point([0, 0, 0]);
  let last: number[] | null = null;
  for (let ring = 1; ring <= rings; ring++) {
    const onRim = ring === rings;
    const numbers = Array.from({ length: corners }, (_, i) => {
      const r = ((diameter / 2) * (ring + (onRim ? 0 : mesh.push()))) / rings;
      const angle = (2 * Math.PI * (i + (onRim ? 0 : mesh.push()))) / corners;
      return mesh.point([r * Math.cos(angle), r * Math.sin(angle), 0]);
    });
    numbers.forEach((n, i) => {
      const next = numbers[(i + 1) % corners];
      if (!last) mesh.triangles.push([middle, n, next]);
      else mesh.triangles.push([last[i], n, next], [last[i], next, last[(i + 1) % corners]]);
    });
    last = numbers;
  }
  return mesh;
}

/** A shell: roof at z = 0 with its middle at the origin, side walls, and end walls if they are closed. */
export function shellSurface({ length, width, height, ends }: ShellMount): Surface {
  const mesh = new Mesh();
  const [x, y] = [length / 2, width / 2];
  const cell = Math.max(length, width, height) / 15;
  const [alongs, acrosses, downs] = [length, width, height].map((side) =>
    Math.max(2, Math.round(side / cell))
  );
  mesh.face([-x, -y, 0], [length, 0, 0], [0, width, 0], alongs, acrosses);
  for (const side of [-y, y]) mesh.face([-x, side, 0], [length, 0, 0], [0, 0, -height], alongs, downs);
  if (ends === 'closed')
    for (const end of [-x, x]) mesh.face([end, -y, 0], [0, width, 0], [0, 0, -height], acrosses, downs);
  return mesh;
}
