/** Numbers a triangle takes in a table made by `triangleFrames`. */
export const FRAME = 30;

/**
 * What the potential of every triangle needs: for each of the three edges its first and second corner, its unit vector
 * along and its unit vector outward within the plane are put one after the other (3 × 9 numbers), then the unit normal.
 */
export function triangleFrames(
  points: Float64Array,
  triangles: Int32Array,
  normal: Float64Array
): Float64Array {
  const frames = new Float64Array((FRAME * triangles.length) / 3);
  for (let t = 0; t < triangles.length / 3; t++) {
    const [nx, ny, nz] = [normal[3 * t], normal[3 * t + 1], normal[3 * t + 2]];
    for (let i = 0; i < 3; i++) {
      const a = 3 * triangles[3 * t + i];
      const b = 3 * triangles[3 * t + ((i + 1) % 3)];
      const [x, y, z] = [0, 1, 2].map((d) => points[b + d] - points[a + d]);
      const length = Math.hypot(x, y, z);
      const [lx, ly, lz] = [x / length, y / length, z / length];
      const o = FRAME * t + 9 * i;
      frames.set([points[a], points[a + 1], points[a + 2], lx, ly, lz], o);
      frames.set([ly * nz - lz * ny, lz * nx - lx * nz, lx * ny - ly * nx], o + 6);
    }
    frames.set([nx, ny, nz], FRAME * t + 27);
  }
  return frames;
}

/**
 * ∫ dS/R over triangle `t` of a table of `triangleFrames`, R the distance from (x, y, z), in closed form:
 * Σ over the edges of P·ln((R⁺ + l⁺)/(R⁻ + l⁻)) − |d|·[atan(P·l⁺/(R₀² + |d|·R⁺)) − atan(P·l⁻/(R₀² + |d|·R⁻))], with
 * d the height over the plane, P the distance from the edge's line within the plane, R₀² = P² + d² (D. R. Wilton,
 * S. M. Rao, A. W. Glisson et al., IEEE Trans. Antennas Propag. 32 (1984) 276).
 */
export function trianglePotential(frames: Float64Array, t: number, x: number, y: number, z: number): number {
  const o = FRAME * t;
  const height = Math.abs(
    (x - frames[o]) * frames[o + 27] +
      (y - frames[o + 1]) * frames[o + 28] +
      (z - frames[o + 2]) * frames[o + 29]
  );
  let sum = 0;
  for (let e = o; e < o + 27; e += 9) {
    const ax = frames[e] - x;
    const ay = frames[e + 1] - y;
    const az = frames[e + 2] - z;
    const next = e + 9 < o + 27 ? e + 9 : o;
    const bx = frames[next] - x;
    const by = frames[next + 1] - y;
    const bz = frames[next + 2] - z;
    const lx = frames[e + 3];
    const ly = frames[e + 4];
    const lz = frames[e + 5];
    const p = ax * frames[e + 6] + ay * frames[e + 7] + az * frames[e + 8];
    const from = ax * lx + ay * ly + az * lz;
    const to = bx * lx + by * ly + bz * lz;
    const near = Math.sqrt(ax * ax + ay * ay + az * az);
    const far = Math.sqrt(bx * bx + by * by + bz * bz);
    // on the line of the edge there is no contribution, and the logarithm may be infinite
    if (Math.abs(p) <= 1e-14 * (near + far)) continue;
    // both forms are equal; the one without cancellation is taken
    sum += p * (from + to >= 0 ? Math.log((far + to) / (near + from)) : Math.log((near - from) / (far - to)));
    if (height > 0) {
      const r2 = p * p + height * height;
      sum -=
        height * (Math.atan((p * to) / (r2 + height * far)) - Math.atan((p * from) / (r2 + height * near)));
    }
  }
  return sum;
}
