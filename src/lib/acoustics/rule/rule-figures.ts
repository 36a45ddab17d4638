import type { CubicMetres, Hertz, Metres } from '../../units.js';
import { soundSpeed, type Air } from '../air.js';
import { arm } from './arm.js';
import { boxShelfFrequency } from './box-shelf.js';
import { checkInstallation } from '../mounts/check-installation.js';
import { airForEach, boxVolumes } from '../mounts/box-volumes.js';
import { closedBox, type ClosedBox } from './closed-box.js';
import type { Installation } from '../installation.js';
import { motorFigures, type MotorFigures } from '../speaker/motor-figures.js';
import type { Mount } from '../mounts/mount.js';
import { outlineArea } from '../outline.js';
import { ringFrequency } from './ring-frequency.js';
import { stringPath } from '../mounts/string-path.js';

export interface BoxFigures extends ClosedBox {
  inside: CubicMetres;
  body: CubicMetres;
  net: CubicMetres;
  /** Middle of the step from all-round to front-only radiation. */
  shelf: Hertz;
}

/** The figures behind the rule of thumb, for marks and readouts; of a shell that a chassis closes there is no way round, and no ring. */
export interface RuleFigures {
  /** D, the string path; null for a box. */
  string: Metres | null;
  /** d, the arm of the dipole; null for a box. */
  arm: Metres | null;
  /** π·d: the string of a small cone in the middle of a round plate that would sound like this; null for a box. */
  actsLike: Metres | null;
  /** c/(2π·d), the corner of the first-order high-pass; null for a box. */
  corner: Hertz | null;
  /** Whether the corner is the frequency at which the string is half a wave long, c/(2D), within 1 %. */
  halfWave: boolean;
  /** Where a closed-ended shell rings (`ringFrequency`), which the rule leaves out; else null. */
  ring: Hertz | null;
  box: BoxFigures | null;
  speaker: MotorFigures;
}

/**
 * The figures that the rule of thumb is made of.
 *
 * @throws RangeError for what `checkInstallation` refuses
 */
export function ruleFigures(installation: Installation, air: Air): RuleFigures {
  checkInstallation(installation);
  const c = soundSpeed(air);
  const isOpen = installation.mount.chassis === undefined;
  const string = isOpen ? (stringPath(installation)?.length ?? null) : null;
  const d = isOpen ? arm(installation) : null;
  const actsLike = d === null ? null : Math.PI * d;
  const speaker = motorFigures(installation.speaker.motor, outlineArea(installation.speaker.cone), air);
  return {
    string,
    arm: d,
    actsLike,
    corner: actsLike === null ? null : c / (2 * actsLike),
    halfWave: string !== null && actsLike !== null && Math.abs(string / actsLike - 1) <= 0.01,
    ring: isOpen ? ring(installation.mount, c) : null,
    box: boxFigures(installation, speaker, c),
    speaker
  };
}

function ring(mount: Mount, c: number): Hertz | null {
  if (mount.kind !== 'shell' || mount.ends !== 'closed') return null;
  return ringFrequency(mount, c);
}

function boxFigures(installation: Installation, speaker: MotorFigures, c: number): BoxFigures | null {
  const { mount } = installation;
  if (mount.kind !== 'box') return null;
  const volumes = boxVolumes(installation);
  return {
    ...closedBox(speaker, airForEach(installation)),
    ...volumes,
    shelf: boxShelfFrequency(mount.length, mount.width, c)
  };
}
