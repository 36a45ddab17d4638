import type { Hertz } from '../../units.js';
import { fillWithGaussian } from './random.js';
import { SpareArrays } from './spare-arrays.js';

/**
 * The stretch of sound that is being made. A cyclic one is a loop: whatever leaves it at the end comes in again at
 * its beginning, and filters are in their steady state.
 */
export interface Span {
  /** Samples. */
  length: number;
  sampleRate: Hertz;
  cyclic: boolean;
  /**
   * White noise along the span, of the density that RMS 1 has at 48 kHz: one array of the span's length for each
   * stream number, the same one each time it is asked for. To be read, not written to.
   */
  noise(stream: number): Float32Array;
  /** Arrays of the span's length to work in. */
  spare: SpareArrays;
}

/** A loop of so many samples. */
export function loopSpan(length: number, sampleRate: Hertz, seed: number): Span {
  const streams = new Map<number, Float32Array>();
  const noise = (stream: number) => {
    let known = streams.get(stream);
    if (!known) streams.set(stream, (known = whiteNoise(length, seed, stream, sampleRate)));
    return known;
  };
  return { length, sampleRate, cyclic: true, noise, spare: new SpareArrays(length) };
}

/** A stretch that leads into a loop: its noise is that of the loop played round, up to the loop's beginning. */
export function leadingSpan(length: number, loop: Span): Span {
  const streams = new Map<number, Float32Array>();
  const noise = (stream: number) => {
    const known = streams.get(stream);
    if (known) return known;
    const round = loop.noise(stream);
    const made = new Float32Array(length);
    for (let end = length; end > 0; end -= round.length) {
      const piece = Math.min(end, round.length);
      made.set(round.subarray(round.length - piece), end - piece);
    }
    streams.set(stream, made);
    return made;
  };
  return { length, sampleRate: loop.sampleRate, cyclic: false, noise, spare: new SpareArrays(length) };
}

function whiteNoise(length: number, seed: number, stream: number, sampleRate: Hertz): Float32Array {
  const noise = new Float32Array(length);
  fillWithGaussian(noise, (seed ^ 0x0a1e) + Math.imul(stream, 0x632be5ab), Math.sqrt(sampleRate / 48000));
  return noise;
}
