import type { Hertz, MetresPerSecond, Seconds } from '../../units.js';
import { solveWave, type WaveProblem } from '../solve/wave-problem.js';
import { fieldOnGrid, type FieldImage } from './field-on-grid.js';
import type { SectionGrid } from './section-grid.js';

/** The harmonics lie so far apart; the sum of them repeats after 1/STEP. */
const STEP: Hertz = 200;
/** The pulse ends here, or where a mount's solution ends. */
const TOP: Hertz = 5000;
/** ln of the share that is left of the pulse's spectrum at its end: −55 dB. */
const FADE = (55 / 20) * Math.LN10;
/**
 * What rings on when the sum repeats would be taken for what comes before the pulse. So all is solved for a wave that
 * dies away by e^{−αt}, −70 dB by then, and made as loud again afterwards. Even the spring in a closed box, which never comes back to
 * rest, is then within 5 %; what the band's end leaves is below 1 %.
 */
const DAMPING = 8 * STEP;
/** Widths σ before the peak of the pulse at which all is still, and at which one begins to look. */
const STILL = -4.5;
const BEGIN = -3;
/** How long one looks on after the peak. */
const AFTER: Seconds = 2.2e-3;

/** A pulse of the cone's acceleration spreading through a section. */
export interface PuffField {
  frequencies: Float64Array;
  /** One a frequency. */
  images: FieldImage[];
  /** What the harmonics add up to before the pulse, where the air is still: less the steady part, which is not solved for. */
  before: Float32Array;
}

/**
 * The harmonics of which a puff is made: every 200 Hz up to 5 kHz or `highest`.
 *
 * @param highest up to where the mount is solved
 * @throws RangeError below 200 Hz
 */
export function puffFrequencies(highest: Hertz): Float64Array {
  const count = Math.floor(Math.min(TOP, highest) / STEP);
  if (!(count > 0)) throw new RangeError(`a puff needs a solution to ${STEP} Hz or more, got ${highest} Hz`);
  return Float64Array.from({ length: count }, (_, i) => (i + 1) * STEP);
}

/**
 * One harmonic of a puff: `fieldOnGrid` of the mount solved at the complex frequency ω − jα, α = 1600/s.
 *
 * @param frequency one of `puffFrequencies`
 */
export function puffImage(
  problem: WaveProblem,
  c: MetresPerSecond,
  frequency: Hertz,
  grid: SectionGrid
): FieldImage {
  const omega = 2 * Math.PI * frequency;
  const damping = DAMPING / omega;
  const state = solveWave({ ...problem, loss: problem.loss + damping, damping }, omega / c);
  return fieldOnGrid(problem, state, grid, damping);
}

/**
 * Joins the `puffImage`s of one section to a puff.
 *
 * @param frequencies `puffFrequencies`
 * @param images one a frequency, in the same order
 */
export function puffField(frequencies: Float64Array, images: FieldImage[]): PuffField {
  const before = new Float32Array(images[0].re.length);
  addHarmonics(frequencies, images, STILL * width(frequencies), before);
  return { frequencies, images, before };
}

/** From when to when one looks at a puff, counted from the peak of the pulse. */
export function puffSpan(frequencies: Float64Array): { from: Seconds; to: Seconds } {
  return { from: BEGIN * width(frequencies), to: AFTER };
}

/**
 * The pressure in every pixel at a time of `puffSpan`, over ρ times the highest acceleration of the cone, in metres: at a
 * distance r in front of an endless plate it would reach S/(2πr), S the area of the cone. The cone's acceleration is
 * e^{−t²/2σ²}, 55 dB down at the last frequency; before it the air is still.
 */
export function puffAt({ frequencies, images, before }: PuffField, time: Seconds, into: Float32Array): void {
  for (let p = 0; p < into.length; p++) into[p] = -before[p];
  addHarmonics(frequencies, images, time, into);
  const growth = Math.exp(DAMPING * time);
  for (let p = 0; p < into.length; p++) into[p] *= growth;
}

/**
 * Adds Re Σ w_k·P_k·e^{jω_k·t} with w_k = 2/T·∫ e^{−t²/2σ²}·e^{−αt}·e^{−jω_k·t} dt =
 * (2/T)·√(2π)·σ·e^{−σ²·(ω_k − jα)²/2}, T = 1/STEP: the pulse that dies away is a pulse too, larger and a little earlier.
 */
function addHarmonics(
  frequencies: Float64Array,
  images: FieldImage[],
  time: Seconds,
  into: Float32Array
): void {
  const sigma = width(frequencies);
  images.forEach(({ re, im }, k) => {
    const omega = 2 * Math.PI * frequencies[k];
    const weight =
      2 * STEP * Math.sqrt(2 * Math.PI) * sigma * Math.exp(-(sigma ** 2 * (omega ** 2 - DAMPING ** 2)) / 2);
    const phase = omega * (time + sigma ** 2 * DAMPING);
    const cos = weight * Math.cos(phase);
    const sin = weight * Math.sin(phase);
    for (let p = 0; p < into.length; p++) into[p] += cos * re[p] - sin * im[p];
  });
}

/** σ of the pulse: e^{−(2πfσ)²/2} is e^{−FADE} at the last frequency. */
function width(frequencies: Float64Array): Seconds {
  return Math.sqrt(2 * FADE) / (2 * Math.PI * frequencies[frequencies.length - 1]);
}
