import type { Hertz, Seconds } from '../../units.js';
import { checkKnobs, type KnobValues, type SoundKnobs, seedKnob } from '../knob.js';
import type { StillKind, StillSource } from '../sound-kind.js';
import { noiseLoop } from './noise-loop.js';

const DURATION: Seconds = 5;

const PINK_NOISE_KNOBS = {
  seed: seedKnob(1770)
} as const satisfies SoundKnobs;

export type PinkNoise = { kind: 'pinkNoise'; name: string } & KnobValues<typeof PINK_NOISE_KNOBS>;

export const PINK_NOISE_KIND: StillKind<PinkNoise> = {
  knobs: PINK_NOISE_KNOBS,
  marks: () => []
};

/** Pink noise, a loop of about five seconds; see `renderPinkNoise`. */
export const PINK_NOISE_SOURCE: StillSource<PinkNoise> = {
  ...PINK_NOISE_KIND,
  render(sound, sampleRate) {
    checkKnobs(PINK_NOISE_KNOBS, sound);
    return renderPinkNoise(DURATION, sampleRate, sound.seed);
  }
};

export const PINK_NOISE_PRESETS: readonly PinkNoise[] = [
  { kind: 'pinkNoise', name: 'Pink noise', seed: 1770 }
];

/**
 * A loop of pink noise: power density ∝ 1/f (−3.01 dB an octave, equal power in every third octave) from 20 Hz
 * to 20 kHz or to just below half the sample rate, nothing outside. Made by an inverse Fourier transform of fixed
 * magnitudes and seeded random phases, so it loops without any seam. RMS −20 dBFS (0.1).
 *
 * @param seconds 0.1 … 60; the loop has the power of two of samples nearest to it on a logarithmic scale
 * @throws RangeError for a duration or sample rate out of range
 */
export function renderPinkNoise(seconds: Seconds, sampleRate: Hertz, seed: number): Float32Array {
  return noiseLoop(seconds, sampleRate, seed, (k) => 1 / k);
}
