import { type ThirdOctaveBand, thirdOctaveBands } from '../../numeric/third-octave-bands.js';
import type { Seconds } from '../../units.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { checkKnobs, type KnobValues, type SoundKnobs } from '../knob.js';
import type { StillKind, StillSource } from '../sound-kind.js';
import { raisedCosine } from '../../numeric/raised-cosine.js';

const PEAK = 0.5;
const PAUSE: Seconds = 0.05;
const FADE: Seconds = 0.02;
/** Tones above this share of the sample rate are left out. */
const CEILING = 0.45;

const STEPPED_TONES_KNOBS = {
  from: { type: 'number', name: 'first tone', unit: 'Hz', min: 20, max: 20000, step: 1, usual: 100 },
  to: { type: 'number', name: 'last tone', unit: 'Hz', min: 20, max: 20000, step: 1, usual: 10000 },
  seconds: {
    type: 'number',
    name: 'time of each tone',
    unit: 's',
    min: 0.1,
    max: 1.5,
    step: 0.05,
    usual: 0.5
  }
} as const satisfies SoundKnobs;

export type SteppedTones = { kind: 'steppedTones'; name: string } & KnobValues<typeof STEPPED_TONES_KNOBS>;

export const STEPPED_TONES_KIND: StillKind<SteppedTones> = {
  knobs: STEPPED_TONES_KNOBS,
  marks: (sound) =>
    bandsOf(sound).map(({ centre, nominal }) => ({ frequency: centre, name: `${nominal} Hz`, harmonics: 1 }))
};

/**
 * Sine tones of peak 0.5 at the exact mid-band frequencies of the third octaves, 1000·10^(x/10) Hz (IEC 61260-1:2014,
 * 5.4, base ten), from the band nearest to the first frequency to that nearest to the last, upward or downward. Each
 * tone begins at phase 0, fades in and out by half a cosine of 20 ms, and is followed by 50 ms of silence, in which the
 * loop also ends. Tones above 0.45 of the sample rate are left out; if none is left the loop is one silent step.
 */
export const STEPPED_TONES_SOURCE: StillSource<SteppedTones> = {
  ...STEPPED_TONES_KIND,
  render(sound, sampleRate) {
    checkKnobs(STEPPED_TONES_KNOBS, sound);
    validSampleRate(sampleRate);
    const tones = bandsOf(sound).filter(({ centre }) => centre <= CEILING * sampleRate);
    const step = Math.round((sound.seconds + PAUSE) * sampleRate);
    const loop = new Float32Array(step * Math.max(1, tones.length));
    tones.forEach(({ centre }, n) => {
      for (let i = 0; i / sampleRate < sound.seconds; i++) {
        const t = i / sampleRate;
        const level = PEAK * raisedCosine(t / FADE) * raisedCosine((sound.seconds - t) / FADE);
        loop[n * step + i] = level * Math.sin(2 * Math.PI * centre * t);
      }
    });
    return loop;
  }
};

export const STEPPED_TONES_PRESETS: readonly SteppedTones[] = [
  { kind: 'steppedTones', name: 'Third-octave tones', from: 100, to: 10000, seconds: 0.5 }
];

function bandsOf({ from, to }: SteppedTones): ThirdOctaveBand[] {
  const bands = thirdOctaveBands(Math.min(from, to), Math.max(from, to));
  return from > to ? bands.reverse() : bands;
}
