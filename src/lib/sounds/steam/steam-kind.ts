import type { MarkedRate, MovingKind } from '../sound-kind.js';
import { FULL_NOTCH } from '../driving.js';
import { beatRate, driverRate, speedAt, type Steam, STEAM_KNOBS } from './steam.js';

/** Effort that keeps the train at its speed: a part for the engine itself, the rest by the load and, rising, the speed. */
function holding({ notch, load }: Steam): number {
  return 0.08 + load * (0.3 + (0.45 * notch) / FULL_NOTCH);
}

function marks(sound: Steam): MarkedRate[] {
  const speed = speedAt(sound);
  if (speed === 0) return [];
  return [
    { frequency: beatRate(sound, speed), name: 'beat', harmonics: 8 },
    { frequency: driverRate(sound, speed), name: 'turns of the drivers', harmonics: 1 }
  ];
}

/** A steam locomotive; a turn is one of its driving wheels, and its pattern of beats comes round with each. */
export const STEAM_KIND: MovingKind<Steam> = {
  knobs: STEAM_KNOBS,
  target(sound) {
    const speed = speedAt(sound);
    return { speed: driverRate(sound, speed), effort: speed === 0 ? 0 : holding(sound) };
  },
  dynamics: (sound) => ({
    range: driverRate(sound, sound.topSpeed),
    rise: 10.2,
    fall: 6.8,
    answer: 0.25,
    loading: Infinity,
    spoolUp: 0.8,
    spoolDown: 1
  }),
  patternTurns: () => 1,
  marks
};
