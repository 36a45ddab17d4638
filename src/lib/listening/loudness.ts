import type { Hertz, Lufs, Seconds } from '../units.js';
import { gatedLoudness } from './gated-loudness.js';
import { KFilter } from './k-weighting.js';

const BLOCK: Seconds = 0.4;
const HOP: Seconds = 0.1;
/** The slowest pole pair (38 Hz, Q ½) has fallen by e^−200 after this time. */
const SETTLING: Seconds = 1;

/**
 * Integrated loudness of a sound that is heard once, ITU-R BS.1770-5, Annex 1: K-weighting, blocks of 400 ms that
 * overlap by 75 %, gated (equations 3 to 7). A 997 Hz sine of full-scale peak in one channel is −3.01 LUFS.
 *
 * @param sound one channel, or channels of equal length
 * @param weights a weight for each channel (1 for left, right and centre, 1.41 for the surrounds, 0 for the
 *   low-frequency channel: table 3); all 1 if left out
 * @returns LUFS; −Infinity if no block passes the absolute gate
 * @throws RangeError for less than 0.4 s, unequal channels, a sample rate outside 8 … 192 kHz
 */
export function integratedLoudness(
  sound: Float32Array | Float32Array[],
  sampleRate: Hertz,
  weights?: number[]
): Lufs {
  const channels = sound instanceof Float32Array ? [sound] : sound;
  const length = channels[0]?.length ?? 0;
  const block = Math.round(BLOCK * sampleRate);
  if (channels.some((channel) => channel.length !== length))
    throw new RangeError('all channels must have the same length');
  if (weights && weights.length !== channels.length)
    throw new RangeError(`weights must be ${channels.length} numbers, got ${weights.length}`);
  if (length < block)
    throw new RangeError(`a sound must last at least 0.4 s to have a loudness, got ${length / sampleRate}`);

  const starts: number[] = [];
  for (let k = 0; Math.round(k * HOP * sampleRate) + block <= length; k++)
    starts.push(Math.round(k * HOP * sampleRate));

  const powers = new Float64Array(starts.length);
  channels.forEach((samples, c) => {
    const weight = weights ? weights[c] : 1;
    const upTo = energyUpTo(samples, new KFilter(sampleRate), [...starts, ...starts.map((s) => s + block)]);
    starts.forEach((s, j) => (powers[j] += (weight * (upTo(s + block) - upTo(s))) / block));
  });
  return gatedLoudness(powers);
}

/**
 * Integrated loudness of one channel that repeats for ever: the filters are in their steady state, and the blocks
 * wrap round the seam; they start every 100 ms or a little closer, evenly over the loop. Loops shorter than a
 * block fill it by their repetitions.
 *
 * @returns LUFS; −Infinity for silence
 * @throws RangeError for an empty loop, a sample rate outside 8 … 192 kHz
 */
export function loopLoudness(samples: Float32Array, sampleRate: Hertz): Lufs {
  const length = samples.length;
  if (length === 0) throw new RangeError('a loop must have at least 1 sample, got 0');
  const filter = new KFilter(sampleRate);
  let settling = Math.round(SETTLING * sampleRate);
  const first = settling % length;
  filter.energy(samples, length - first, length);
  for (settling -= first; settling > 0; settling -= length) filter.energy(samples, 0, length);

  const block = Math.round(BLOCK * sampleRate);
  const count = Math.max(1, Math.ceil(length / (HOP * sampleRate)));
  const starts = Array.from({ length: count }, (_, j) => Math.floor((j * length) / count));
  const upTo = energyUpTo(samples, filter, [...starts, ...starts.map((s) => (s + block) % length), length]);
  const endless = (i: number) => Math.floor(i / length) * upTo(length) + upTo(i % length);
  return gatedLoudness(Float64Array.from(starts, (s) => (endless(s + block) - endless(s)) / block));
}

/** Weighted energy from the beginning up to any of the given sample indices. */
function energyUpTo(samples: Float32Array, filter: KFilter, indices: number[]): (index: number) => number {
  const ends = [...new Set(indices)].filter((index) => index > 0).sort((a, b) => a - b);
  const sums = new Map<number, number>([[0, 0]]);
  let sum = 0;
  let reached = 0;
  for (const end of ends) {
    sum += filter.energy(samples, reached, end);
    sums.set(end, sum);
    reached = end;
  }
  return (index) => sums.get(index)!;
}
