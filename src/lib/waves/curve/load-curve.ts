import { airDensity, soundSpeed, type Air } from '../../acoustics/air.js';
import type { Installation } from '../../acoustics/installation.js';
import { boxVolumes } from '../../acoustics/mounts/box-volumes.js';
import { limitAtZero, loadScale, type LoadLowEnd } from './even-form.js';
import { complexArray, type ComplexArray } from '../../numeric/complex-array.js';

/**
 * The resistance of the load, −Im of its even form. At low frequency it is a small part of the load, below what the
 * interpolation resolves: below the lowest sample it follows the power law through the lowest two (radiation, or loss),
 * and nowhere is it below 0. Openings lose enough that the interpolation resolves it.
 */
export function keepPassive(
  even: ComplexArray,
  frequency: Float64Array,
  samples: ComplexArray,
  support: Float64Array,
  low: LoadLowEnd
): void {
  // the support begins with the lowest sample ± and the next ±
  const [f0, f1] = [support[0], support[2]];
  const [r0, r1] = [-samples.im[0], -samples.im[2]];
  const power = r0 > 0 && r1 > 0 ? Math.log(r1 / r0) / Math.log(f1 / f0) : 1;
  for (let i = 0; i < frequency.length; i++) {
    if (frequency[i] < f0 && low !== 'vented') even.im[i] = -r0 * (frequency[i] / f0) ** power;
    even.im[i] = Math.min(even.im[i], 0);
  }
}

/**
 * jω·Za = −ω²ρ·z. The surface of a box holds the whole inside; the speaker's body takes some of it, which makes the air in it
 * stiffer by ρc²·(1/Vnet − 1/Vinside), exactly so well below the first standing wave.
 */
export function loadStiffness(
  installation: Installation,
  air: Air,
  frequency: Float64Array,
  held: Float64Array,
  even: ComplexArray,
  low: LoadLowEnd
): ComplexArray {
  const out = complexArray(frequency.length);
  const rho = airDensity(air);
  let body = 0;
  // in a vented room it is part of the equations
  if (installation.mount.kind === 'box' && low === 'compliance') {
    const { inside, net } = boxVolumes(installation);
    body = rho * soundSpeed(air) ** 2 * (1 / net - 1 / inside);
  }
  for (let i = 0; i < frequency.length; i++) {
    // z is held beyond the highest frequency; at 0 Hz the even form has f² in it already
    const square = held[i] > 0 ? frequency[i] ** 2 / loadScale(low, held[i]) : limitAtZero(low);
    const scale = -rho * (2 * Math.PI) ** 2 * square;
    out.re[i] = scale * even.re[i] + body;
    out.im[i] = scale * even.im[i];
  }
  return out;
}

/** Za from jω·Za. */
export function impedance(stiffness: ComplexArray, frequency: Float64Array): ComplexArray {
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
