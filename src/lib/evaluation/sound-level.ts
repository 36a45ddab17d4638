import type { Air } from '../acoustics/air.js';
import type { Listener } from '../acoustics/listener.js';
import { USUAL_DRIVE } from '../acoustics/speaker/amplifiers.js';
import { driveVolts } from '../acoustics/speaker/drive.js';
import { sensitivityDb } from '../acoustics/speaker/sensitivity.js';
import type { Speaker } from '../acoustics/speaker/speaker.js';
import type { BenchFile } from '../file/bench-file.js';
import type { PowerSpectrum } from '../listening/power-spectrum.js';
import type { Decibels } from '../units.js';
import type { Answer } from './answer.js';
import { powerGain } from './power-gain.js';

/**
 * What 0 dB is in dB re 20 µPa: the middle of this speaker's band in an endless plate, at that voltage (rms), at the listener's
 * distance; far away at 1 m.
 */
export function zeroAtListenerDb(
  speaker: Pick<Speaker, 'motor' | 'cone'>,
  air: Air,
  volts: number,
  { distance = 1 }: Pick<Listener, 'distance'>
): Decibels {
  return sensitivityDb(speaker, air) + 20 * Math.log10(volts / distance);
}

/** The same at the drive of a bench. */
export function zeroOfBenchDb(
  speaker: Pick<Speaker, 'motor' | 'cone'>,
  { air, drive }: Pick<BenchFile, 'air' | 'drive'>,
  listener: Pick<Listener, 'distance'>
): Decibels {
  return zeroAtListenerDb(speaker, air, driveVolts(drive ?? USUAL_DRIVE), listener);
}

/**
 * How loud a sound is at the listener, in dB re 20 µPa, unweighted, when its own rms voltage is `volts`; −Infinity for silence. The answer is
 * taken against its own speaker, whatever drive it has taken in.
 */
export function soundLevelDb(
  answer: Pick<Answer, 'respond' | 'drive'>,
  { power, binWidth }: Pick<PowerSpectrum, 'power' | 'binWidth'>,
  zeroDb: Decibels
): Decibels {
  const gain = powerGain(answer, power.length, binWidth);
  let [through, whole] = [0, 0];
  for (let k = 0; k < power.length; k++) {
    through += power[k] * gain[k];
    whole += power[k];
  }
  if (!(whole > 0)) return -Infinity;
  return zeroDb + 10 * Math.log10(through / whole) - 20 * Math.log10(answer.drive);
}
