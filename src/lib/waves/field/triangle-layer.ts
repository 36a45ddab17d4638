import { FRAME } from '../assembly/triangle-potential.js';

/** Numbers that `triangleLayer` writes: four results and three that it needs on the way. */
export const LAYER = 7;

/** Square of the height in metres below which a point lies on the plane. */
const ON_PLANE = 1e-18;

/**
 * The static double layer of a triangle in closed form, d the signed height of (x, y, z) over its plane and R the distance: puts
 * d·∫ φ_i/R³ dS of the three hats and d·∫ dS/R into the first four of `into`. With Ω = d·∫ dS/R³ the signed solid angle, P_e the
 * distance of the lines of the edges, u_e their outward directions, f_e = ∫ dl/R along them and g_i = ∇φ_i,
 *
 * - d·∫ φ_i/R³ dS = φ_i(foot)·Ω − d·g_i·Σ_e u_e·f_e, because ∫ ∇′(1/R) dS = Σ_e u_e·f_e,
 * - ∫ dS/R = Σ_e P_e·f_e − d·Ω
 *
 * (f after D. R. Wilton et al., IEEE Trans. Antennas Propag. 32 (1984) 276; Ω after A. van Oosterom and J. Strackee, IEEE
 * Trans. Biomed. Eng. 30 (1983) 125). On the plane itself all are 0, the mean of the two sides.
 *
 * @param frames made by `triangleFrames`
 */
export function triangleLayer(
  frames: Float64Array,
  t: number,
  x: number,
  y: number,
  z: number,
  into: Float64Array
): void {
  const o = FRAME * t;
  const d =
    (x - frames[o]) * frames[o + 27] +
    (y - frames[o + 1]) * frames[o + 28] +
    (z - frames[o + 2]) * frames[o + 29];
  into.fill(0);
  if (d * d <= ON_PLANE) return;
  const away = [
    distance(frames, o, x, y, z),
    distance(frames, o + 9, x, y, z),
    distance(frames, o + 18, x, y, z)
  ];
  let twice = 0;
  let potential = 0;
  let opening = away[0] * away[1] * away[2];
  // Σ u·f
  let sx = 0;
  let sy = 0;
  let sz = 0;
  for (let i = 0; i < 3; i++) {
    const e = o + 9 * i;
    const ax = frames[e] - x;
    const ay = frames[e + 1] - y;
    const az = frames[e + 2] - z;
    const next = o + 9 * ((i + 1) % 3);
    const bx = frames[next] - x;
    const by = frames[next + 1] - y;
    const bz = frames[next + 2] - z;
    const from = ax * frames[e + 3] + ay * frames[e + 4] + az * frames[e + 5];
    const to = bx * frames[e + 3] + by * frames[e + 4] + bz * frames[e + 5];
    const p = ax * frames[e + 6] + ay * frames[e + 7] + az * frames[e + 8];
    const near = away[i];
    const far = away[(i + 1) % 3];
    // three forms of the same, each without cancellation
    const f =
      from >= 0
        ? Math.log((far + to) / (near + from))
        : to <= 0
          ? Math.log((near - from) / (far - to))
          : Math.log(((far + to) * (near - from)) / (p * p + d * d));
    opening += (ax * bx + ay * by + az * bz) * away[(i + 2) % 3];
    potential += p * f;
    sx += f * frames[e + 6];
    sy += f * frames[e + 7];
    sz += f * frames[e + 8];
    const length = to - from;
    twice += p * length;
    // the hat of the corner that this edge does not touch: its value at the foot, and its slope along u
    const corner = (i + 2) % 3;
    into[corner] = p * length;
    // kept until the sums are known
    into[4 + corner] = length;
  }
  const solid = 2 * Math.atan2(twice * d, opening);
  for (let i = 0; i < 3; i++) {
    const e = o + 9 * ((i + 1) % 3);
    const slope = sx * frames[e + 6] + sy * frames[e + 7] + sz * frames[e + 8];
    into[i] = (into[i] * solid + d * into[4 + i] * slope) / twice;
  }
  into[3] = d * (potential - d * solid);
}

function distance(frames: Float64Array, o: number, x: number, y: number, z: number): number {
  const dx = frames[o] - x;
  const dy = frames[o + 1] - y;
  const dz = frames[o + 2] - z;
  return Math.sqrt(dx * dx + dy * dy + dz * dz);
}
