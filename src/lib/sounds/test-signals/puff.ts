import type { Hertz, Seconds } from '../../units.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { checkKnobs, type KnobValues, type SoundKnobs } from '../knob.js';
import type { StillKind, StillSource } from '../sound-kind.js';

const PEAK = 0.5;
/** About how long a loop lasts, if the pause is shorter. */
const LOOP: Seconds = 4;
/** A Gaussian spectrum is 20 dB down at so many times its standard deviation: √(2·ln 10). */
const TWENTY_DB = Math.sqrt(2 * Math.LN10);
/** And 60 dB at so many: √(2·ln 1000). */
const SIXTY_DB = Math.sqrt(6 * Math.LN10);
/** The pulse is cut where it is below 10⁻⁷ of its peak, at so many standard deviations in time. */
const CUT = Math.sqrt(14 * Math.LN10);

const PUFF_KNOBS = {
  upper: { type: 'number', name: 'upper frequency', unit: 'Hz', min: 100, max: 12000, step: 10, usual: 8000 },
  pause: { type: 'number', name: 'time between puffs', unit: 's', min: 0.25, max: 5, step: 0.05, usual: 0.8 }
} as const satisfies SoundKnobs;

export type Puff = { kind: 'puff'; name: string } & KnobValues<typeof PUFF_KNOBS>;

/**
 * Standard deviation in hertz of the Gaussian spectrum e^(−f²/2s²) that is 20 dB down at the upper frequency. It is
 * held low enough that half the sample rate lies 60 dB down.
 */
function puffWidth(upper: Hertz, sampleRate: Hertz): Hertz {
  return Math.min(upper / TWENTY_DB, sampleRate / 2 / SIXTY_DB);
}

export const PUFF_KIND: StillKind<Puff> = {
  knobs: PUFF_KNOBS,
  marks: () => []
};

/**
 * Single puffs of the cone, always the same way: x(t) = ½·e^(−(2πst)²/2), whose spectrum is ½·e^(−f²/2s²)/(s√(2π)), flat at
 * the low end and 20 dB down at the upper frequency (see `puffWidth`). The loop holds about four seconds of them, at
 * least one, and begins and ends in silence.
 */
export const PUFF_SOURCE: StillSource<Puff> = {
  ...PUFF_KIND,
  render(sound, sampleRate) {
    checkKnobs(PUFF_KNOBS, sound);
    validSampleRate(sampleRate);
    const { upper, pause } = sound;
    const s = 2 * Math.PI * puffWidth(upper, sampleRate);
    const count = Math.max(1, Math.round(LOOP / pause));
    const loop = new Float32Array(Math.round(count * pause * sampleRate));
    for (let n = 0; n < count; n++) {
      const middle = (n + 0.5) * pause;
      const [from, to] = [middle - CUT / s, middle + CUT / s];
      for (let i = Math.ceil(from * sampleRate); i <= to * sampleRate; i++)
        loop[i] = PEAK * Math.exp(-((s * (i / sampleRate - middle)) ** 2) / 2);
    }
    return loop;
  }
};

export const PUFF_PRESETS: readonly Puff[] = [
  { kind: 'puff', name: 'Single puffs', upper: 8000, pause: 0.8 },
  { kind: 'puff', name: 'Soft single puffs', upper: 800, pause: 0.8 }
];
