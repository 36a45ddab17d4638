import { STEP } from './course-steps.js';

/**
 * Adds level·sin(2π·(phase + start)) to a signal; both curves are given at the steps (course-steps.ts) and straight
 * between. It is left out where its level is nothing or its frequency above 0.45 of the sample rate.
 *
 * @param phase in periods
 * @param start in periods
 */
export function addTone(out: Float32Array, phase: Float64Array, level: Float32Array, start = 0): void {
  const { length } = out;
  for (let from = 0, k = 0; from < length; from += STEP, k++) {
    if (level[k] === 0 && level[k + 1] === 0) continue;
    const to = Math.min(length, from + STEP);
    const turn = (phase[k + 1] - phase[k]) / (to - from);
    if (Math.abs(turn) > 0.45) continue;
    const rise = (level[k + 1] - level[k]) / (to - from);
    // Within a step the phase grows evenly: the sine is turned by the same angle each time.
    const turnCos = Math.cos(2 * Math.PI * turn);
    const turnSin = Math.sin(2 * Math.PI * turn);
    const begin = 2 * Math.PI * (phase[k] + start);
    let cos = Math.cos(begin);
    let sin = Math.sin(begin);
    let size = level[k];
    for (let i = from; i < to; i++) {
      out[i] += size * sin;
      const turned = cos * turnCos - sin * turnSin;
      sin = sin * turnCos + cos * turnSin;
      cos = turned;
      size += rise;
    }
  }
}
