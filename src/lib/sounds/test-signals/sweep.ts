import type { Hertz, Seconds } from '../../units.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { checkKnobs, type KnobValues, type SoundKnobs } from '../knob.js';
import type { StillKind, StillSource } from '../sound-kind.js';
import { raisedCosine } from '../../numeric/raised-cosine.js';

const PEAK = 0.5;
const PAUSE: Seconds = 0.5;
/** Fades at both ends last this share of the sweep, but not longer than that time. */
const FADE = { share: 0.02, most: 0.05 };
/** Above the first of these shares of the sample rate the sweep fades out, at the second it is silent. */
const CEILING = { from: 0.43, to: 0.45 };

const SWEEP_KNOBS = {
  from: { type: 'number', name: 'first frequency', unit: 'Hz', min: 20, max: 20000, step: 1, usual: 50 },
  to: { type: 'number', name: 'last frequency', unit: 'Hz', min: 20, max: 20000, step: 1, usual: 16000 },
  seconds: { type: 'number', name: 'sweep time', unit: 's', min: 1, max: 30, step: 0.5, usual: 8 }
} as const satisfies SoundKnobs;

export type Sweep = { kind: 'sweep'; name: string } & KnobValues<typeof SWEEP_KNOBS>;

/**
 * The phase of an exponential (logarithmic) sweep, in radians, t seconds after its start:
 *
 *     2π·f1·T/ln(f2/f1) · (e^(t·ln(f2/f1)/T) − 1),   and 2π·f1·t where f1 = f2
 *
 * so that the frequency at t is f1·(f2/f1)^(t/T): every octave takes the same time. Also downward, f2 < f1.
 * (A. Farina, Simultaneous measurement of impulse response and distortion with a swept-sine technique, AES 108th
 * Convention, Paris 2000, preprint 5093.)
 */
function sweepPhase(from: Hertz, to: Hertz, seconds: Seconds, t: Seconds): number {
  const stretch = Math.log(to / from);
  if (stretch === 0) return 2 * Math.PI * from * t;
  return ((2 * Math.PI * from * seconds) / stretch) * Math.expm1((t * stretch) / seconds);
}

export const SWEEP_KIND: StillKind<Sweep> = {
  knobs: SWEEP_KNOBS,
  marks: () => []
};

/**
 * A logarithmic sine sweep of peak 0.5, then half a second of silence. It fades in and out by half a cosine over 2 % of
 * its time, at most 50 ms, and is silent where it would pass 0.45 of the sample rate. The loop begins and ends in
 * silence.
 */
export const SWEEP_SOURCE: StillSource<Sweep> = {
  ...SWEEP_KIND,
  render(sound, sampleRate) {
    checkKnobs(SWEEP_KNOBS, sound);
    validSampleRate(sampleRate);
    const { from, to, seconds } = sound;
    const loop = new Float32Array(Math.round((seconds + PAUSE) * sampleRate));
    const fade = Math.min(FADE.most, FADE.share * seconds);
    for (let i = 0; i / sampleRate < seconds; i++) {
      const t = i / sampleRate;
      const frequency = from * (to / from) ** (t / seconds);
      const below = (CEILING.to - frequency / sampleRate) / (CEILING.to - CEILING.from);
      if (below <= 0) continue;
      const level = PEAK * raisedCosine(t / fade) * raisedCosine((seconds - t) / fade) * raisedCosine(below);
      loop[i] = level * Math.sin(sweepPhase(from, to, seconds, t));
    }
    return loop;
  }
};

export const SWEEP_PRESETS: readonly Sweep[] = [
  { kind: 'sweep', name: 'Sweep upward', from: 50, to: 16000, seconds: 8 },
  { kind: 'sweep', name: 'Sweep downward', from: 4000, to: 100, seconds: 8 }
];
