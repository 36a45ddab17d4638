import type { Span } from '../blocks/span.js';

/** How a puff of steam comes and goes, in samples: the time constants of its rise and of its decay. */
export interface Puff {
  at: number;
  rise: number;
  decay: number;
  height: number;
}

/** A puff is left off where it has fallen to e^−8 (−69 dB). */
const LASTS = 8;

/**
 * Adds height·(1 − e^(−t/rise))²·e^(−t/decay) to a flow, from a real place on: an opening port, then a cylinder that
 * empties. It starts without a step in value or slope. In a loop it goes round.
 */
export function addPuff(
  flow: Float32Array,
  { cyclic }: Pick<Span, 'cyclic'>,
  { at, rise, decay, height }: Puff
): void {
  const length = flow.length;
  const first = Math.ceil(at);
  const t = first - at;
  // (1 − a)²·d = d − 2·a·d + a²·d: three decays, each multiplied on from sample to sample.
  let slow = height * Math.exp(-t / decay);
  let middle = -2 * slow * Math.exp(-t / rise);
  let fast = slow * Math.exp((-2 * t) / rise);
  const slowFall = Math.exp(-1 / decay);
  const middleFall = slowFall * Math.exp(-1 / rise);
  const fastFall = middleFall * Math.exp(-1 / rise);
  const last = Math.ceil(LASTS * decay + rise);
  let i = cyclic ? ((first % length) + length) % length : first;
  for (let n = 0; n < last; n++) {
    if (i >= 0) flow[i] += slow + middle + fast;
    slow *= slowFall;
    middle *= middleFall;
    fast *= fastFall;
    if (++i >= length) {
      if (!cyclic) return;
      i = 0;
    }
  }
}
