import type { JsonObject } from '../json/json-object.js';

/**
 * The way from one form of the bench file to the next, on raw JSON: nothing is validated yet. A step is pure and changes
 * only what the two forms say differently. All else, unknown keys and wrong values among it, it hands on untouched to the
 * schema, which names it at the place where it stands. What a step moves or takes away it checks itself, so that every
 * sentence names the key that the user wrote.
 */
export interface VersionStep {
  /** What `version` says before. */
  from: number;
  /** What it says afterwards: the same number where a form changed before there was a number for it. */
  to: number;
  /** @throws RangeError with one sentence that names the place */
  raise(file: JsonObject): JsonObject;
}
