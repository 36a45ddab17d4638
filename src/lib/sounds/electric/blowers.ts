import type { Hertz } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import type { Span } from '../blocks/span.js';
import { eventChance } from '../blocks/event-chance.js';
import { addTone } from './add-tone.js';
import { addScaled, type CourseSteps } from './course-steps.js';
import type { Electric } from './electric.js';
import { wholePhase } from './whole-phase.js';

/** Blade rates of the two blowers, of motors and of transformer. */
const BLADES: Hertz[] = [196, 287];
/** Harmonics of a blade rate: number, size. */
const HARMONICS: [number, number][] = [
  [1, 0.13],
  [2, 0.07],
  [3, 0.035]
];
/** Bands of the air: frequency, Q, gain. */
const AIR: [Hertz, number, number][] = [
  [330, 0.5, 0.9],
  [1100, 0.5, 0.36]
];

/**
 * Adds the blowers, which run at constant speed: the rush of air (to `air`, which is dulled later) and the tones of the
 * blades (to `sum`). They pull harder, slowly, as the motors warm.
 */
export function addBlowers(
  { sum, air }: { sum: Float32Array; air: Float32Array },
  sound: Electric,
  steps: CourseSteps,
  span: Span,
  gain: number
): void {
  const { sampleRate } = span;
  if (sound.blowers === 0) return;
  const pull = steps.spool.map((spool) => gain * sound.blowers * (0.8 + 0.4 * spool));
  for (const [frequency, q, size] of AIR)
    if (frequency < 0.4 * sampleRate)
      addScaled(air, filter(span.noise(1), section('bandPass', frequency, q, sampleRate), span, size), pull);
  BLADES.forEach((usual, fan) => {
    const chance = eventChance(sound.seed, 40, fan);
    const rate = usual * (1 + 0.04 * chance.gaussian());
    for (const [n, size] of HARMONICS)
      addTone(
        sum,
        wholePhase(steps, span, 0, n * rate),
        pull.map((now) => size * now),
        chance.uniform()
      );
  });
}
