import type { Seconds } from '../../units.js';
import { checkKnobs, type KnobValues, type SoundKnobs, seedKnob } from '../knob.js';
import type { StillKind, StillSource } from '../sound-kind.js';
import { noiseLoop } from './noise-loop.js';

const DURATION: Seconds = 5;

const WHITE_NOISE_KNOBS = {
  seed: seedKnob(1771)
} as const satisfies SoundKnobs;

export type WhiteNoise = { kind: 'whiteNoise'; name: string } & KnobValues<typeof WHITE_NOISE_KNOBS>;

export const WHITE_NOISE_KIND: StillKind<WhiteNoise> = {
  knobs: WHITE_NOISE_KNOBS,
  marks: () => []
};

/**
 * White noise: the same power in every hertz from 20 Hz to 20 kHz (or to just below half the sample rate), nothing
 * outside; third octaves rise 1 dB a band. A loop of about five seconds, the nearest power of two of samples.
 */
export const WHITE_NOISE_SOURCE: StillSource<WhiteNoise> = {
  ...WHITE_NOISE_KIND,
  render(sound, sampleRate) {
    checkKnobs(WHITE_NOISE_KNOBS, sound);
    return noiseLoop(DURATION, sampleRate, sound.seed, () => 1);
  }
};

export const WHITE_NOISE_PRESETS: readonly WhiteNoise[] = [
  { kind: 'whiteNoise', name: 'White noise', seed: 1771 }
];
