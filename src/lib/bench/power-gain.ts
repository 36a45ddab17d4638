import type { Answer } from './model/answer.js';

/** |H|² on evenly spaced bins from 0. */
export function powerGain(
  { respond }: Pick<Answer, 'respond'>,
  bins: number,
  binWidth: number
): Float64Array {
  const { re, im } = respond(Float64Array.from({ length: bins }, (_, k) => k * binWidth));
  return re.map((real, k) => real * real + im[k] * im[k]);
}
