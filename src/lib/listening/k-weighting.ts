import type { Hertz } from '../units.js';

/** A second-order section, b0 + b1·z⁻¹ + b2·z⁻² over 1 + a1·z⁻¹ + a2·z⁻². */
export interface Section {
  b: readonly [number, number, number];
  a: readonly [1, number, number];
}

/** ITU-R BS.1770-5, Annex 1, table 1: the shelf that stands for the head, at 48 kHz. */
const SHELF_48K: Section = {
  b: [1.53512485958697, -2.69169618940638, 1.19839281085285],
  a: [1, -1.69065929318241, 0.73248077421585]
};

/** ITU-R BS.1770-5, Annex 1, table 2: the RLB high-pass, at 48 kHz. */
const HIGH_PASS_48K: Section = { b: [1, -2, 1], a: [1, -1.99004745483398, 0.99007225036621] };

/**
 * The two sections of the K-weighting of ITU-R BS.1770-5 at any sample rate of 8 kHz or more: the standard's own
 * coefficients at 48 kHz; else each is taken back to its analogue prototype by the inverse bilinear transform and
 * forward again, with the frequency of its poles kept exact.
 *
 * @throws RangeError outside 8 … 192 kHz
 */
export function kWeighting(sampleRate: Hertz): [Section, Section] {
  if (!(sampleRate >= 8000 && sampleRate <= 192000))
    throw new RangeError(`sample rate must be within 8000 … 192000 Hz, got ${sampleRate}`);
  if (sampleRate === 48000) return [SHELF_48K, HIGH_PASS_48K];
  return [atRate(SHELF_48K, sampleRate), atRate(HIGH_PASS_48K, sampleRate)];
}

/** z⁻¹ = (1 − s)/(1 + s) turns c0 + c1·z⁻¹ + c2·z⁻² into (s² + …) over (1 + s)²: constant, s, s². */
function analogue([c0, c1, c2]: readonly [number, number, number]): [number, number, number] {
  return [c0 + c1 + c2, 2 * (c0 - c2), c0 - c1 + c2];
}

/** The way back, s = (1 − z⁻¹)/(1 + z⁻¹). */
function digital([d0, d1, d2]: [number, number, number]): [number, number, number] {
  return [d0 + d1 + d2, 2 * (d0 - d2), d0 - d1 + d2];
}

function atRate(section: Section, sampleRate: Hertz): Section {
  const over = analogue(section.b);
  const under = analogue(section.a);
  // |s| of the poles is tan(π·f/48000); at the new rate the same f has |s| = tan(π·f/rate).
  const pole = Math.sqrt(under[0] / under[2]);
  const frequency = (48000 / Math.PI) * Math.atan(pole);
  const stretch = pole / Math.tan((Math.PI * frequency) / sampleRate);
  const b = digital([over[0], over[1] * stretch, over[2] * stretch ** 2]);
  const a = digital([under[0], under[1] * stretch, under[2] * stretch ** 2]);
  return { b: [b[0] / a[0], b[1] / a[0], b[2] / a[0]], a: [1, a[1] / a[0], a[2] / a[0]] };
}

/** So many samples are weighted at a time: a browser is soon fast at what it calls often. */
const AT_A_TIME = 2048;

/** Both sections in series with their memory (transposed direct form II), started at rest. */
export class KFilter {
  readonly #sections: [Section, Section];
  readonly #state = new Float64Array(4);

  /** @throws RangeError outside 8 … 192 kHz */
  constructor(sampleRate: Hertz) {
    this.#sections = kWeighting(sampleRate);
  }

  /**
   * Sum of squares of the weighted samples `from` … `to` − 1 (indices of `samples`). The filter remembers where it
   * was, so consecutive stretches give the same as one long one.
   */
  energy(samples: Float32Array, from: number, to: number): number {
    const state = this.#state;
    let sum = 0;
    for (let at = from; at < to; at += AT_A_TIME)
      sum = weighted(samples, at, Math.min(to, at + AT_A_TIME), this.#sections, state, sum);
    // Denormal numbers would make the silence after a sound a hundred times slower than the sound.
    if (state.every((x) => Math.abs(x) < 1e-200)) state.fill(0);
    return sum;
  }
}

/** The sum, and the squares of these weighted samples added to it one by one; `state` is what the filter remembers. */
function weighted(
  samples: Float32Array,
  from: number,
  to: number,
  [first, second]: [Section, Section],
  state: Float64Array,
  sum: number
): number {
  const { b: p, a: c } = first;
  const { b: q, a: d } = second;
  const [p0, p1, p2, c1, c2] = [p[0], p[1], p[2], c[1], c[2]];
  const [q0, q1, q2, d1, d2] = [q[0], q[1], q[2], d[1], d[2]];
  let s1 = state[0];
  let s2 = state[1];
  let t1 = state[2];
  let t2 = state[3];
  for (let i = from; i < to; i++) {
    const x = samples[i];
    const y = p0 * x + s1;
    s1 = p1 * x - c1 * y + s2;
    s2 = p2 * x - c2 * y;
    const z = q0 * y + t1;
    t1 = q1 * y - d1 * z + t2;
    t2 = q2 * y - d2 * z;
    sum += z * z;
  }
  state[0] = s1;
  state[1] = s2;
  state[2] = t1;
  state[3] = t2;
  return sum;
}
