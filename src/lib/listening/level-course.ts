import type { Decibels, Hertz, Seconds } from '../units.js';

/** How loud a sound is as it goes on. Point i of n stands for the time (i + ½)·duration/n. */
export interface LevelCourse {
  duration: Seconds;
  /** Length of the stretch that each point is taken from. */
  window: Seconds;
  /** 10·log10 of the mean square of the stretch; −Infinity for silence. */
  rmsDb: Float64Array<ArrayBuffer>;
  /** 20·log10 of the largest absolute sample of the stretch; −Infinity for silence. */
  peakDb: Float64Array<ArrayBuffer>;
}

/** A shorter stretch would follow the wave itself instead of its level. */
const SHORTEST: Seconds = 0.005;

/**
 * Average (RMS) and peak level of a sound over time, in dB against full scale: 0 dB is a sample of 1 for the peak and a
 * mean square of 1 for the average, so that their difference is the crest factor and a full-scale sine lies at −3.01 dB
 * with its peaks at 0. The points share the duration evenly and each looks at its own share of the sound, or at 5 ms
 * about its middle where the share is shorter, shifted inward at both ends; no sample is left out.
 *
 * @param samples one channel; not repeated beyond its ends
 * @param points how many, 1 … 100000
 * @throws RangeError for an empty sound, a sample rate that is not above 0, a number of points outside its range
 */
export function levelCourse(samples: Float32Array, sampleRate: Hertz, points: number): LevelCourse {
  const length = samples.length;
  if (length === 0) throw new RangeError('a sound must have at least 1 sample, got 0');
  if (!(sampleRate > 0 && sampleRate < Infinity))
    throw new RangeError(`sample rate must be above 0 Hz, got ${sampleRate}`);
  if (!(Number.isInteger(points) && points >= 1 && points <= 100000))
    throw new RangeError(`points must be a whole number within 1 … 100000, got ${points}`);
  const share = length / points;
  const width = Math.min(length, Math.max(share, Math.ceil(SHORTEST * sampleRate)));
  const rmsDb = new Float64Array(points);
  const peakDb = new Float64Array(points);
  for (let i = 0; i < points; i++) {
    const start = Math.max(0, Math.min(length - width, (i + 0.5) * share - width / 2));
    const from = Math.floor(start + 1e-9);
    const to = Math.min(length, Math.ceil(start + width - 1e-9));
    [rmsDb[i], peakDb[i]] = levels(samples, from, to);
  }
  return { duration: length / sampleRate, window: width / sampleRate, rmsDb, peakDb };
}

function levels(samples: Float32Array, from: number, to: number): [rmsDb: Decibels, peakDb: Decibels] {
  let sum = 0;
  let largest = 0;
  for (let i = from; i < to; i++) {
    const size = Math.abs(samples[i]);
    sum += size * size;
    if (size > largest) largest = size;
  }
  return [10 * Math.log10(sum / (to - from)), 20 * Math.log10(largest)];
}
