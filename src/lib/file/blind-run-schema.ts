import * as v from 'valibot';
import type { Saying } from './blind-run.js';
import { name, object, oneOf, place, text, within } from './schema-parts.js';

const SAID = ['same', 'different', 'A', 'B', 'C'] as const satisfies readonly Saying[];

/** What its values say of one another is asked in `runProblem`. */
export const blindRun = object({
  question: oneOf(['same', 'like', 'better']),
  mounts: v.array(name, 'must be a list'),
  places: v.array(place, 'must be a list'),
  sound: text(255),
  planned: v.pipe(within([1, 60], 'trials'), place),
  seed: place,
  bench: name,
  answers: v.array(object({ behind: v.array(place, 'must be a list'), said: oneOf(SAID) }), 'must be a list'),
  ended: v.optional(oneOf(['early', 'changed']))
});
