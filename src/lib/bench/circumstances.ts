import { checkWithin } from '../acoustics/limits.js';
import { type Amplifier, checkAmplifier, checkDrive, type Drive } from '../acoustics/speaker/drive.js';
import { checkLift, type Lift } from '../acoustics/speaker/lift.js';
import type { BenchFile, BenchNoise } from '../file/bench-file.js';
import { PLACE_LEVEL } from '../sounds/places/place-spectra.js';

/** The bench with all mounts driven as hard as this; @throws RangeError as `checkDrive` does. */
export function withDrive(file: BenchFile, drive: Drive): BenchFile {
  checkDrive(drive);
  return { ...file, drive };
}

/** The bench with another amplifier; @throws RangeError as `checkAmplifier` does. */
export function withAmplifier(file: BenchFile, amplifier: Amplifier): BenchFile {
  checkAmplifier(amplifier);
  return { ...file, amplifier };
}

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

/**
 * The bench with the noise of the place where it will run; null for none.
 *
 * @throws RangeError with one sentence for a level beyond `PLACE_LEVEL`
 */
export function withNoise(file: BenchFile, noise: BenchNoise | null): BenchFile {
  if (noise) {
    checkWithin('level of the place', noise.levelDb, PLACE_LEVEL, 'dBA');
    return { ...file, noise };
  }
  if (!file.noise) return file;
  const silent = { ...file };
  delete silent.noise;
  return silent;
}
