import type { Ohms, Watts } from '../../units.js';
import { checkWithin } from '../limits.js';

/** What an amplifier gives: a voltage (rms), or the power that this voltage would bring into a load of so many ohms. */
export type Drive = { volts: number } | { watts: Watts; into: Ohms };

/** What an amplifier bears and gives. */
export interface Amplifier {
  /** The least load it may be given. */
  leastLoad: Ohms;
  /** What it gives into that load before it clips. */
  power: Watts;
}

/** Least and greatest values. */
export const DRIVE_LIMITS = {
  volts: [0.001, 100],
  watts: [1e-6, 1000],
  into: [0.1, 10000],
  leastLoad: [0.1, 1000],
  power: [0.001, 1000]
} as const satisfies Record<string, readonly [number, number]>;

/** The voltage (rms) of a drive: U = √(P·R). */
export function driveVolts(drive: Drive): number {
  return 'volts' in drive ? drive.volts : Math.sqrt(drive.watts * drive.into);
}

/** The highest voltage (rms) of a sine that an amplifier gives before it clips: √(P·R) of its least load. */
export function clippingVolts({ leastLoad, power }: Amplifier): number {
  return Math.sqrt(power * leastLoad);
}

/** @throws RangeError with one sentence for values beyond `DRIVE_LIMITS` */
export function checkDrive(drive: Drive): void {
  if ('volts' in drive) return checkWithin('the drive', drive.volts, DRIVE_LIMITS.volts, 'V');
  checkWithin('the drive', drive.watts, DRIVE_LIMITS.watts, 'W');
  checkWithin('the load that the drive is written for', drive.into, DRIVE_LIMITS.into, 'Ω');
}

/** @throws RangeError with one sentence for values beyond `DRIVE_LIMITS` */
export function checkAmplifier({ leastLoad, power }: Amplifier): void {
  checkWithin('the amplifier’s least load', leastLoad, DRIVE_LIMITS.leastLoad, 'Ω');
  checkWithin('the amplifier’s power', power, DRIVE_LIMITS.power, 'W');
}
