import { FULL_NOTCH } from '../driving.js';
import type { MarkedRate, MovingKind } from '../sound-kind.js';
import { axleTeeth, type Electric, ELECTRIC_KNOBS, humRate, speedAt, wheelRate } from './electric.js';

function marks(sound: Electric): MarkedRate[] {
  const rates: MarkedRate[] = [{ frequency: humRate(sound), name: 'hum', harmonics: 8 }];
  const speed = speedAt(sound);
  if (speed > 0)
    rates.push({ frequency: axleTeeth(sound) * wheelRate(sound, speed), name: 'gear mesh', harmonics: 3 });
  return rates;
}

/** An electric; a turn is one of its wheels, and what turns with them comes round with each. */
export const ELECTRIC_KIND: MovingKind<Electric> = {
  knobs: ELECTRIC_KNOBS,
  target(sound) {
    const speed = speedAt(sound);
    return {
      speed: wheelRate(sound, speed),
      effort: speed === 0 ? 0 : 0.15 + (0.35 * sound.notch) / FULL_NOTCH
    };
  },
  dynamics: (sound) => ({
    range: wheelRate(sound, sound.topSpeed),
    rise: 10.5,
    fall: 7.5,
    answer: 0.3,
    loading: Infinity,
    spoolUp: 1,
    spoolDown: 1.3
  }),
  patternTurns: () => 1,
  marks
};
