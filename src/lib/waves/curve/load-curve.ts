import { airDensity, soundSpeed, type Air } from '../../acoustics/air.js';
import type { Installation } from '../../acoustics/installation.js';
import { boxVolumes } from '../../acoustics/mounts/box-volumes.js';
import { complexArray, type ComplexArray } from '../../numeric/complex-array.js';

/**
 * The resistance of the load, −Im of its even form. At low frequency it is a small part of the load, below what the
 * interpolation resolves: below the lowest sample it follows the power law through the lowest two (radiation, or loss),
 * and nowhere is it below 0.
 */
export function keepPassive(
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
export function loadStiffness(
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
