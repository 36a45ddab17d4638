import { soundSpeed, type Air } from '../../acoustics/air.js';
import { checkInstallation, checkWithin, LIMITS } from '../../acoustics/mounts/check-installation.js';
import { lossOf } from '../../acoustics/mounts/loss.js';
import type { Installation } from '../../acoustics/installation.js';
import type { Hertz, MetresPerSecond } from '../../units.js';
import { ACCURACY, type AccuracyName } from '../mesh/accuracy.js';
import { mountMesh } from '../mesh/mount-mesh.js';
import { waveProblem, type WaveProblem } from './wave-problem.js';

export interface WaveOptions {
  /** `full` unless told. */
  accuracy?: AccuracyName;
  /** Loss factor η within 0 … 0.2; that of the mount (`lossOf`) unless told. */
  loss?: number;
}

/** A mount's equations, ready to be solved at any frequency up to `highest`. */
export interface MountProblem {
  problem: WaveProblem;
  c: MetresPerSecond;
  /** Up to where the mesh follows the wavelength. */
  highest: Hertz;
}

/**
 * Meshes a mount and makes its matrices.
 *
 * @throws RangeError for what `checkInstallation` refuses, for values beyond LIMITS, and for a mount too large or too slender
 *   to be meshed
 */
export function mountProblem(
  installation: Installation,
  air: Air,
  { accuracy = 'full', loss = lossOf(installation.mount) }: WaveOptions = {}
): MountProblem {
  checkInstallation(installation);
  checkWithin('temperature', air.temperatureC, LIMITS.temperatureC, '°C');
  checkWithin('loss factor', loss, LIMITS.loss);
  const c = soundSpeed(air);
  const { mesh, pistons, patches, chambers, highest } = mountMesh(installation, c, ACCURACY[accuracy]);
  return { problem: waveProblem(mesh, pistons, loss, patches, chambers), c, highest };
}
