import type { Hertz } from '../../units.js';
import { section } from '../blocks/filter.js';
import type { Span } from '../blocks/span.js';

export interface Resonance {
  frequency: Hertz;
  q: number;
  gain: number;
}

/** So many samples at a time. */
const STRETCH = 4096;

/** Stands beside one that has no other beside it. */
const NONE = { b: 0, a1: 0, a2: 0 };

/** What is left of any of them after this time cannot be heard, in seconds. */
const SETTLING = 0.5;

/**
 * Adds to `sum` what a signal sets ringing in resonances that stand side by side: the band-pass sections of
 * blocks/filter.ts, two at a time, stretch by stretch. In a loop they are
 * in their steady state, otherwise they start from rest. What lies above 0.45 of the sample rate is left out.
 */
export function addResonances(
  signal: Float32Array,
  resonances: readonly Resonance[],
  { sampleRate, cyclic }: Pick<Span, 'sampleRate' | 'cyclic'>,
  sum: Float32Array
): void {
  const sections = resonances
    .filter(({ frequency }) => frequency < 0.45 * sampleRate)
    .map(({ frequency, q, gain }) => {
      const { b0, a1, a2 } = section('bandPass', frequency, q, sampleRate);
      return { b: gain * b0, a1, a2 };
    });
  const pairs: Pair[] = [];
  for (let n = 0; n < sections.length; n += 2)
    pairs.push({ one: sections[n], other: sections[n + 1] ?? NONE, known: new Float64Array(6) });
  const pass = (from: number, heard: boolean): void => {
    // Sums of four at a time: another order would be rounded otherwise.
    const four = new Float64Array(STRETCH);
    for (let at = from; at < signal.length; at += STRETCH) {
      const stretch = signal.subarray(at, at + STRETCH);
      for (let n = 0; n < pairs.length; n++) {
        if (n % 2 === 0) four.fill(0);
        ring(stretch, pairs[n], four);
        if (heard && (n % 2 === 1 || n === pairs.length - 1)) add(sum.subarray(at, at + STRETCH), four);
      }
    }
  };
  const length = signal.length;
  // A loop is first run unheard for as long as they take to settle: the end of it, or several times all of it.
  const before = cyclic ? Math.round(SETTLING * sampleRate) : 0;
  pass(length - (before % length), false);
  for (let round = 0; round < Math.floor(before / length); round++) pass(0, false);
  pass(0, true);
}

/** Two of them, and what they remember: the last two samples, and the last two of what each gives. */
interface Pair {
  one: { b: number; a1: number; a2: number };
  other: { b: number; a1: number; a2: number };
  known: Float64Array;
}

/** Adds to `both` what a stretch of the signal sets ringing. */
function ring(stretch: Float32Array, { one, other, known }: Pair, both: Float64Array): void {
  const { b: pb, a1: pa, a2: pz } = one;
  const { b: qb, a1: qa, a2: qz } = other;
  let x1 = known[0];
  let x2 = known[1];
  let p1 = known[2];
  let p2 = known[3];
  let q1 = known[4];
  let q2 = known[5];
  for (let i = 0; i < stretch.length; i++) {
    const x = stretch[i];
    const change = x - x2;
    const p0 = pb * change - pa * p1 - pz * p2;
    const q0 = qb * change - qa * q1 - qz * q2;
    x2 = x1;
    x1 = x;
    p2 = p1;
    p1 = p0;
    q2 = q1;
    q1 = q0;
    both[i] = both[i] + p0 + q0;
  }
  known[0] = x1;
  known[1] = x2;
  known[2] = p1;
  known[3] = p2;
  known[4] = q1;
  known[5] = q2;
}

function add(sum: Float32Array, both: Float64Array): void {
  for (let i = 0; i < sum.length; i++) sum[i] += both[i];
}
