import { checkKnobs } from './knob.js';
import { type GeneratedSound, isMoving, knobsOfKind, movingKind } from './kinds.js';

/**
 * Refuses a sound that cannot be made: a knob out of its range, or knobs that do not go together.
 * @throws RangeError with one sentence
 */
export function checkSound(sound: GeneratedSound): void {
  checkKnobs(knobsOfKind(sound.kind), sound);
  if (isMoving(sound)) movingKind(sound).target(sound);
}
