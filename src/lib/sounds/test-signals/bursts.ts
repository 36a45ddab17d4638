import type { Seconds } from '../../units.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { checkKnobs, type KnobValues, type SoundKnobs } from '../knob.js';
import type { StillKind, StillSource } from '../sound-kind.js';

const PEAK = 0.5;
/** About how long a loop lasts, if a burst and its pause are shorter. */
const LOOP: Seconds = 4;
/** Bursts of tones above this share of the sample rate are left out. */
const CEILING = 0.45;

const BURSTS_KNOBS = {
  frequency: {
    type: 'number',
    name: 'tone frequency',
    unit: 'Hz',
    min: 20,
    max: 16000,
    step: 1,
    usual: 1000
  },
  cycles: {
    type: 'number',
    name: 'cycles of each burst',
    unit: 'count',
    min: 1,
    max: 100,
    step: 1,
    usual: 10,
    whole: true
  },
  pause: { type: 'number', name: 'pause', unit: 's', min: 0.05, max: 5, step: 0.05, usual: 0.4 }
} as const satisfies SoundKnobs;

export type Bursts = { kind: 'bursts'; name: string } & KnobValues<typeof BURSTS_KNOBS>;

export const BURSTS_KIND: StillKind<Bursts> = {
  knobs: BURSTS_KNOBS,
  marks: ({ frequency }) => [{ frequency, name: 'tone', harmonics: 1 }]
};

/**
 * Tone bursts of n cycles in a Hann window of their own length T = n/f, and pauses:
 *
 *     x(t) = ½ · ½·(1 − cos(2πt/T)) · sin(2πft),   0 ≤ t ≤ T
 *
 * Between its first zeros a burst's spectrum is 4/T wide (2/T either side of f); the window's side lobes begin at
 * −31.5 dB (F. J. Harris, Proc. IEEE 66 (1978) 51, table 1). The loop holds about four seconds of bursts, at least one, and
 * ends in a pause. Silence where the tone lies above 0.45 of the sample rate.
 */
export const BURSTS_SOURCE: StillSource<Bursts> = {
  ...BURSTS_KIND,
  render(sound, sampleRate) {
    checkKnobs(BURSTS_KNOBS, sound);
    validSampleRate(sampleRate);
    const { frequency, cycles, pause } = sound;
    const lasts = cycles / frequency;
    const count = Math.max(1, Math.round(LOOP / (lasts + pause)));
    const loop = new Float32Array(Math.round(count * (lasts + pause) * sampleRate));
    if (frequency > CEILING * sampleRate) return loop;
    for (let n = 0; n < count; n++) {
      const start = n * (lasts + pause);
      for (let i = Math.ceil(start * sampleRate); i / sampleRate < start + lasts; i++) {
        const t = i / sampleRate - start;
        const window = 0.5 - 0.5 * Math.cos((2 * Math.PI * t) / lasts);
        loop[i] = PEAK * window * Math.sin(2 * Math.PI * frequency * t);
      }
    }
    return loop;
  }
};

export const BURSTS_PRESETS: readonly Bursts[] = [
  { kind: 'bursts', name: 'Tone bursts, 1 kHz', frequency: 1000, cycles: 10, pause: 0.4 },
  { kind: 'bursts', name: 'Tone bursts, 250 Hz', frequency: 250, cycles: 5, pause: 0.4 }
];
