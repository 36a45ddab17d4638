import { airDensity, soundSpeed, type Air } from '../../acoustics/air.js';
import { checkWithin, LIMITS } from '../../acoustics/mounts/check-installation.js';
import { boxVolumes } from '../../acoustics/mounts/box-volumes.js';
import type { Installation } from '../../acoustics/installation.js';
import type { Listener } from '../../acoustics/listener.js';
import type { Response } from '../../acoustics/response.js';
import { complexArray, type ComplexArray } from '../../numeric/complex-array.js';
import { multiply } from '../../numeric/multiply.js';
import { evaluateFit, rationalFit, type RationalFit } from '../../numeric/rational-fit.js';
import type { Decibels, Hertz, Kilograms, SquareMetres } from '../../units.js';
import { fromEven, inverse, lossTurn, toEven, turnedBy } from './even-form.js';
import { gather, TOLERANCE, type WaveCurve } from './wave-curve.js';
import { drivenBy } from './driven-by.js';
import type { Complex } from '../../numeric/complex.js';
import { acousticLoad } from '../field/acoustic-load.js';
import { transfer } from '../field/transfer.js';

/** A geometry solved once, of which every listener is read off. */
export interface SolvedWaves {
  /** Up to where the mesh follows the wavelength. */
  highest: Hertz;
  curve: WaveCurve;
  /** `freeAirMass` of the speaker. */
  airMass: Kilograms;
}

/**
 * What one listener hears of a solved geometry, at every frequency: plain data, a few kilobytes, fit to leave a worker. Sizes
 * and air are those it was solved for; the motor and the volume of the speaker's body are free.
 */
export interface HeardWaves {
  /** Of what is heard and of the load, in their even form and turned by `turn` (`lossTurn`). */
  fit: RationalFit;
  turn: Complex;
  /** Whether the surface has a free edge: all mounts but the box. */
  open: boolean;
  /** How what is heard behaves at low frequency. */
  low: 'rises' | 'finite';
  /** Of the cone. */
  area: SquareMetres;
  airMass: Kilograms;
  highest: Hertz;
  interpolationErrorDb: Decibels;
  /** Unknowns of all systems solved at a frequency together. */
  unknowns: number;
  /** Number of frequencies solved. */
  solved: number;
}

/** A response with what is known about how it came about. */
export interface WaveResponse extends Response {
  /** Za, pressure over volume velocity, both faces, in Pa·s/m³; of a box it is infinite at 0 Hz. */
  load: ComplexArray;
  /** Up to where it was solved; beyond, the mount's part of the response and the load over jω are held. */
  highest: Hertz;
  interpolationErrorDb: Decibels;
  unknowns: number;
  solved: number;
}

/**
 * Reads one listener off a solved geometry.
 *
 * @param listener any angle; a distance of 0.01 m or more, measured from the middle of the cone, or far field
 * @throws RangeError for an angle or a distance beyond LIMITS
 */
export function hearWaves({ curve, highest, airMass }: SolvedWaves, listener: Listener): HeardWaves {
  checkListener(listener);
  const { problem } = curve;
  const { open } = problem.surface;
  const turn = lossTurn(open, problem.loss);
  const low = open && listener.distance === undefined ? 'rises' : 'finite';
  const heard = gather(curve.states, (state) => transfer(problem, state, listener));
  const load = gather(curve.states, (state) => acousticLoad(problem, state));
  const fit = rationalFit(
    curve.frequency,
    [toEven(heard, curve.frequency, low), toEven(load, curve.frequency, open ? 'finite' : 'compliance')].map(
      (output) => turnedBy(output, turn)
    ),
    TOLERANCE,
    { exact: [0, 1] }
  );
  return {
    fit,
    turn,
    open,
    low,
    area: problem.area,
    airMass,
    highest,
    interpolationErrorDb: curve.interpolationErrorDb,
    unknowns: curve.states[0].jumps.reduce((sum, m) => sum + (m ? m.re.length : 0), 0),
    solved: curve.states.length
  };
}

/**
 * The response of a speaker where `hearWaves` listened, on any grid. 0 dB as in `waveSolution`.
 *
 * @param installation of the sizes that were solved
 * @param frequency Hz, each at least 0, any length; the response holds this same array as its grid
 * @throws RangeError for a moving mass below that of the air at the cone
 */
export function heardResponse(
  heard: HeardWaves,
  installation: Installation,
  air: Air,
  frequency: Float64Array,
  speaker: 'ideal' | 'full' = 'full'
): WaveResponse {
  for (const f of frequency)
    if (!(f >= 0 && f < Infinity)) throw new RangeError(`a frequency must be at least 0 Hz, got ${f}`);
  const { fit, open, highest } = heard;
  const held = frequency.map((f) => Math.min(f, highest));
  const back = inverse(heard.turn);
  const [evenHeard, evenLoad] = evaluateFit(fit, held).map((output) => turnedBy(output, back));
  const samples = turnedBy({ re: fit.values[1].re.slice(), im: fit.values[1].im.slice() }, back);
  keepPassive(evenLoad, held, samples, fit.support);
  const h = fromEven(evenHeard, held, heard.low);
  const stiffness = loadStiffness(installation, air, frequency, held, evenLoad, open);
  if (speaker === 'full') {
    const { motor } = installation.speaker;
    multiply(h, drivenBy(frequency, motor, heard.area, heard.airMass, stiffness));
  }
  const { interpolationErrorDb, unknowns, solved } = heard;
  return {
    frequency,
    re: h.re,
    im: h.im,
    load: impedance(stiffness, frequency),
    highest,
    interpolationErrorDb,
    unknowns,
    solved
  };
}

function checkListener({ angleDeg, distance }: Listener): void {
  checkWithin('angle of the listener', angleDeg, [-360, 360], '°');
  if (distance !== undefined) checkWithin('distance of the listener', distance, LIMITS.distance, 'm');
}

/**
 * The resistance of the load, −Im of its even form. At low frequency it is a small part of the load, below what the
 * interpolation resolves: below the lowest sample it follows the power law through the lowest two (radiation, or loss),
 * and nowhere is it below 0.
 */
function keepPassive(
  even: ComplexArray,
  frequency: Float64Array,
  samples: ComplexArray,
  support: Float64Array
): void {
  // the support begins with the lowest sample ± and the next ±
  const [f0, f1] = [support[0], support[2]];
  const [r0, r1] = [-samples.im[0], -samples.im[2]];
  const power = r0 > 0 && r1 > 0 ? Math.log(r1 / r0) / Math.log(f1 / f0) : 1;
  for (let i = 0; i < frequency.length; i++) {
    if (frequency[i] < f0) even.im[i] = -r0 * (frequency[i] / f0) ** power;
    even.im[i] = Math.min(even.im[i], 0);
  }
}

/**
 * jω·Za = −ω²ρ·z. The surface of a box holds the whole inside; the speaker's body takes some of it, which makes the air in it
 * stiffer by ρc²·(1/Vnet − 1/Vinside), exactly so well below the first standing wave.
 */
function loadStiffness(
  installation: Installation,
  air: Air,
  frequency: Float64Array,
  held: Float64Array,
  even: ComplexArray,
  open: boolean
): ComplexArray {
  const out = complexArray(frequency.length);
  const rho = airDensity(air);
  let body = 0;
  if (installation.mount.kind === 'box') {
    const { inside, net } = boxVolumes(installation);
    body = rho * soundSpeed(air) ** 2 * (1 / net - 1 / inside);
  }
  for (let i = 0; i < frequency.length; i++) {
    // the even form of a box's load is f²·z, and z is held beyond the highest frequency
    const ratio = held[i] > 0 ? frequency[i] / held[i] : 1;
    const scale = -rho * (2 * Math.PI) ** 2 * (open ? frequency[i] ** 2 : ratio ** 2);
    out.re[i] = scale * even.re[i] + body;
    out.im[i] = scale * even.im[i];
  }
  return out;
}

/** Za from jω·Za. */
function impedance(stiffness: ComplexArray, frequency: Float64Array): ComplexArray {
  const out = complexArray(frequency.length);
  for (let i = 0; i < frequency.length; i++) {
    const w = 2 * Math.PI * frequency[i];
    if (w > 0) {
      out.re[i] = stiffness.im[i] / w;
      out.im[i] = -stiffness.re[i] / w;
    } else if (stiffness.re[i] !== 0) out.im[i] = -Infinity;
  }
  return out;
}
