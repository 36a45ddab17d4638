import { multiply } from '../../numeric/multiply.js';
import { scaled } from '../../numeric/scaled.js';
import { sum } from '../../numeric/sum.js';
import type { ComplexArray } from '../../numeric/complex-array.js';
import type { Hertz, Metres, MetresPerSecond } from '../../units.js';
import { airDensity, soundSpeed, type Air } from '../air.js';
import { arm } from './arm.js';
import { boxShelf, boxShelfFrequency } from './box-shelf.js';
import { checkInstallation, checkWithin, LIMITS } from '../mounts/check-installation.js';
import { OPENING_KINDS, type Mount } from '../mounts/mount.js';
import { airForEach, boxVolumes } from '../mounts/box-volumes.js';
import { asSeenBySecond } from '../mounts/second.js';
import { closedBox } from './closed-box.js';
import { firstOrderSection } from './first-order.js';
import type { Installation } from '../installation.js';
import type { Listener } from '../listener.js';
import { type DrivenCones, drivenCones } from '../speaker/driven-cones.js';
import { motorFigures } from '../speaker/motor-figures.js';
import { outlineArea } from '../outline.js';
import type { Response } from '../response.js';
import { secondOrderHighPass } from './second-order.js';

/**
 * The rule of thumb: the response of a speaker in a mount, straight in front of the cone, in closed form.
 *
 * - Free air, plate and shell: a first-order high-pass with the corner fc = c/(2π·d), d the arm of the dipole
 *   (see `arm`). At a distance r it takes the factor 1 + 1/(jkr), so that H = (jf + c/(2πr))/(jf + fc), which
 *   tends to d/r at f = 0; far field if no distance is given.
 * - Box: the shelf of `boxShelf`, from all-round to front-only radiation.
 * - `full` speaker: times its second-order high-pass, with fs and Qts, or in a box with fc and Qtc. `ideal`
 *   leaves that out: the cone moves with the same velocity at all frequencies.
 * - Two speakers: each as if it were alone where it is, their sum, or reversed their difference; in series each with half the voltage. In a
 *   box they share its air. What the air outside tells one of the other is left out.
 *
 * 0 dB is the same cone velocity (`ideal`) or the mid-band level of this speaker (`full`) in an endless plate, on
 * the axis, at the same distance. Time factor e^{+jωt}. Left out: the overshoot of 6 to 8 dB of open mounts where
 * k·a is 2 to 3, ripples above, and the ring of a closed-ended shell (docs/models).
 *
 * @param frequency Hz, each at least 0, any length; the response holds this same array as its grid
 * @param listener angle 0 only; a distance of 0.01 m or more, meant for distances well beyond the mount's size
 * @throws RangeError for what `checkInstallation` refuses, for another angle, over a board, for a mount with openings, and for values beyond LIMITS
 */
export function ruleOfThumb(
  installation: Installation,
  air: Air,
  listener: Listener,
  frequency: Float64Array,
  speaker: 'ideal' | 'full' = 'full'
): Response {
  checkInstallation(installation);
  checkWithin('temperature', air.temperatureC, LIMITS.temperatureC, '°C');
  checkBare(installation.mount);
  checkInFront({ ...listener, board: listener.board || installation.board !== undefined });
  const { distance } = listener;
  checkFrequencies(frequency);

  const c = soundSpeed(air);
  const { second } = installation;
  const h = mountAlone(installation, c, distance, frequency);
  if (second) {
    const other = mountAlone(asSeenBySecond(installation), c, distance, frequency);
    sum([h, scaled(other, second.reversed ? -1 : 1)]);
  }
  if (speaker === 'full') {
    const { resonance, q } = resonanceIn(installation, air);
    multiply(h, secondOrderHighPass(frequency, resonance, q));
    if (second?.wiring === 'series') return { frequency, ...scaled(h, 0.5) };
  }
  return { frequency, re: h.re, im: h.im };
}

/** How a voltage moves the cones, by the same rule: outside a box the air is a mass that the moving mass contains, inside a spring. */
export function ruleDriven(installation: Installation, air: Air, frequency: Float64Array): DrivenCones {
  const { speaker, mount, second } = installation;
  let spring = 0;
  if (mount.kind === 'box') spring = (airDensity(air) * soundSpeed(air) ** 2) / boxVolumes(installation).net;
  const load = {
    re: new Float64Array(frequency.length).fill(spring),
    im: new Float64Array(frequency.length)
  };
  return drivenCones(
    frequency,
    speaker.motor,
    outlineArea(speaker.cone),
    0,
    [load, load, load],
    second ?? null
  );
}

/** What the mount does with one cone. */
function mountAlone(
  installation: Installation,
  c: MetresPerSecond,
  distance: Metres | undefined,
  frequency: Float64Array
): ComplexArray {
  const { mount } = installation;
  if (mount.kind === 'box') return boxShelf(frequency, boxShelfFrequency(mount.length, mount.width, c));
  const nearField = distance === undefined ? 0 : c / (2 * Math.PI * distance);
  return firstOrderSection(frequency, nearField, c / (2 * Math.PI * arm(installation)!));
}

function resonanceIn(installation: Installation, air: Air): { resonance: Hertz; q: number } {
  const { speaker, mount } = installation;
  const figures = motorFigures(speaker.motor, outlineArea(speaker.cone), air);
  if (mount.kind !== 'box') return { resonance: figures.fs, q: figures.qts };
  const { fc, qtc } = closedBox(figures, airForEach(installation));
  return { resonance: fc, q: qtc };
}

/** @throws RangeError for a mount with openings */
function checkBare(mount: Mount): void {
  const opening = OPENING_KINDS.find((kind) => mount[kind] !== undefined);
  if (opening)
    throw new RangeError(
      `the rule of thumb knows nothing of a ${opening} of a mount: ask for the wave solution, or leave mount.${opening} out`
    );
}

/** @throws RangeError over a board, for an angle other than 0, and for a distance beyond LIMITS */
export function checkInFront({ angleDeg, distance, board }: Listener): void {
  if (board)
    throw new RangeError(
      'the rule of thumb knows nothing of a board: ask for the wave solution, or leave listener.board out'
    );
  if (angleDeg !== 0)
    throw new RangeError(
      `the rule of thumb knows the sound straight in front of the cone only: angle must be 0, got ${angleDeg}`
    );
  if (distance !== undefined) checkWithin('distance of the listener', distance, LIMITS.distance, 'm');
}

function checkFrequencies(frequency: Float64Array): void {
  for (let i = 0; i < frequency.length; i++)
    if (!(frequency[i] >= 0 && frequency[i] < Infinity))
      throw new RangeError(`a frequency must be at least 0 Hz, got ${frequency[i]}`);
}
