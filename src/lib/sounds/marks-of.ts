import { type GeneratedSound, isMoving, movingKind, stillKind } from './kinds.js';
import type { MarkedRate } from './sound-kind.js';

/** The rates that the picture of a sound marks; a machine that drives by itself has no steady one. */
export function marksOf(sound: GeneratedSound): MarkedRate[] {
  if (!isMoving(sound)) return stillKind(sound).marks(sound);
  return sound.runPast ? [] : movingKind(sound).marks(sound);
}
