import { type Amplifier, clippingVolts } from '../acoustics/speaker/drive.js';
import { coilCurrents, electricalImpedance } from '../acoustics/speaker/driven-cones.js';
import { type Lift, liftResponse } from '../acoustics/speaker/lift.js';
import type { Motor } from '../acoustics/speaker/speaker.js';
import type { Strain } from '../listening/strain.js';
import type { ComplexArray } from '../numeric/complex-array.js';
import { fftFrequencies, impulseResponse, tapsFor } from '../numeric/impulse-response.js';
import { logGrid } from '../numeric/log-grid.js';
import { multiply } from '../numeric/multiply.js';
import { scaled } from '../numeric/scaled.js';
import type { Hertz, Metres, Ohms, Watts } from '../units.js';
import type { Answer } from './answer.js';

/** Where the least of an impedance is looked for. */
const HEARD = { from: 20, to: 10_000 } as const;
const IMPEDANCE_GRID = logGrid(HEARD.from, HEARD.to, 48);

/**
 * What leads from a sound's voltage before the lift to that at the terminals, to how far each cone moves and what flows through each
 * coil, as impulse responses for 1 V.
 */
export interface StrainFilters {
  /** Null without a lift: it is the same voltage. */
  terminals: Float32Array | null;
  displacement: Float32Array[];
  current: Float32Array[];
}

export function strainFilters(
  { driven }: Pick<Answer, 'driven'>,
  sampleRate: Hertz,
  lift: Lift | null = null
): StrainFilters {
  const taps = tapsFor(sampleRate);
  const frequency = fftFrequencies(taps, sampleRate);
  const moved = driven(frequency);
  const lifting = lift && liftResponse(lift, frequency);
  const filter = (bins: ComplexArray) => impulseResponse(lifting ? multiply(scaled(bins, 1), lifting) : bins);
  return {
    displacement: moved.displacement.map(filter),
    current: coilCurrents(moved).map(filter),
    terminals: lifting && impulseResponse(lifting)
  };
}

/** The strain of a sound as it is, at the terminals behind its lift, and behind the other filters. */
export interface Strained {
  own: Strain;
  terminals: Strain;
  displacement: Strain[];
  current: Strain[];
}

export type Limit = 'travel' | 'heat' | 'clipping';

export interface Limits {
  /** Peak of the displacement over this very sound, of the cone that moves more. */
  travel: Metres;
  /** In the coil that gets more: on average, and in the loudest second. */
  heat: { mean: Watts; loudest: Watts };
  /** What the drive becomes behind the lift: volts (rms) at the terminals. */
  terminals: number;
  /** Peak of that voltage over the highest that the amplifier gives; null without one. */
  clipping: number | null;
  /** The highest drive (volts, rms of this sound) that each limit allows. */
  most: Partial<Record<Limit, number>>;
  /** The limit that comes first, and its drive. */
  first: { limit: Limit; volts: number };
}

/**
 * What a drive does to speaker and amplifier on this very sound. The drive is the sound's own rms voltage, before it is lifted. Travel is held against the largest
 * linear displacement, heat in the loudest second against the rated power, the voltage's peak against that of a sine that the amplifier
 * gives just unclipped.
 *
 * @param volts rms, above 0
 * @returns null for silence
 */
export function limitsOf(
  { own, terminals, displacement, current }: Strained,
  volts: number,
  { re, xmax, ratedPower }: Motor,
  amplifier: Amplifier | null
): Limits | null {
  const rms = Math.sqrt(own.meanSquare);
  if (!(rms > 0)) return null;
  const perVolt = 1 / rms;
  const most = (all: Strain[], key: keyof Strain) => Math.max(...all.map((one) => one[key]));
  const travelPerVolt = most(displacement, 'peak') * perVolt;
  const heatPerSquare = (key: 'meanSquare' | 'loudestSecond') => most(current, key) * re * perVolt * perVolt;
  const top = amplifier ? Math.SQRT2 * clippingVolts(amplifier) : null;
  const allowed: Partial<Record<Limit, number>> = {
    travel: xmax / travelPerVolt,
    heat: Math.sqrt(ratedPower / heatPerSquare('loudestSecond')),
    ...(top !== null && { clipping: top / (terminals.peak * perVolt) })
  };
  const [limit, least] = (Object.entries(allowed) as [Limit, number][]).reduce((a, b) =>
    b[1] < a[1] ? b : a
  );
  return {
    travel: travelPerVolt * volts,
    heat: {
      mean: heatPerSquare('meanSquare') * volts * volts,
      loudest: heatPerSquare('loudestSecond') * volts * volts
    },
    terminals: Math.sqrt(terminals.meanSquare) * perVolt * volts,
    clipping: top === null ? null : (terminals.peak * perVolt * volts) / top,
    most: allowed,
    first: { limit, volts: least }
  };
}

/** An impedance against frequency, and its least from 20 Hz to 10 kHz. */
export interface ImpedanceCurve {
  frequency: Float64Array;
  /** Its modulus. */
  ohms: Float64Array;
  least: { ohms: Ohms; frequency: Hertz };
}

export function impedanceCurve(
  { driven }: Pick<Answer, 'driven'>,
  frequency = IMPEDANCE_GRID
): ImpedanceCurve {
  const { re, im } = electricalImpedance(driven(frequency));
  const ohms = re.map((x, i) => Math.hypot(x, im[i]));
  const at = ohms.indexOf(ohms.reduce((a, b) => Math.min(a, b)));
  return { frequency, ohms, least: { ohms: ohms[at], frequency: frequency[at] } };
}
