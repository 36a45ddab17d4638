import { checkLift, type Lift } from '../acoustics/speaker/lift.js';
import type { BenchFile } from '../file/bench-file.js';

/**
 * The bench with the low end of all mounts lifted; 0 dB is no lift.
 *
 * @throws RangeError with one sentence for values beyond `LIFT_LIMITS`
 */
export function withLift(file: BenchFile, lift: Lift): BenchFile {
  checkLift(lift);
  const lifted: BenchFile = { ...file, lift };
  if (lift.gainDb === 0) delete lifted.lift;
  return lifted;
}
