import type { Hertz } from '../units.js';
import type { Answer } from './answer.js';

/** Frequencies closer than this share of themselves are not asked for one by one. */
const FINE = 0.01;

/**
 * |H|² on evenly spaced bins from 0. Where the bins are finer than 1 % of their frequency a model is asked every 1 % only, and
 * the bins between are interpolated: what rings in a mount is wider (a resonance of Q 30 spans 3 %), and a model that
 * is asked for thousands of bins would hold up the page.
 */
export function powerGain({ respond }: Pick<Answer, 'respond'>, bins: number, binWidth: Hertz): Float64Array {
  const asked: number[] = [];
  for (let k = 0; k < bins; k = Math.max(k + 1, Math.floor(k * (1 + FINE)))) asked.push(k);
  if (asked.at(-1) !== bins - 1) asked.push(bins - 1);
  const { re, im } = respond(Float64Array.from(asked, (k) => k * binWidth));
  const gain = new Float64Array(bins);
  for (let i = 0; i < asked.length; i++) {
    const [from, to] = [asked[Math.max(0, i - 1)], asked[i]];
    gain[to] = re[i] * re[i] + im[i] * im[i];
    for (let k = from + 1; k < to; k++)
      gain[k] = gain[from] + ((gain[to] - gain[from]) * (k - from)) / (to - from);
  }
  return gain;
}
