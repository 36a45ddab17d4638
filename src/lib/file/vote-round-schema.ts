import * as v from 'valibot';
import { PLACE_KINDS } from '../sounds/places/place-spectra.js';
import { BENCH_FILE_LIMITS as limits } from './bench-file-limits.js';
import { listOf, modelName, name, object, oneOf, place, text, truth, within } from './schema-parts.js';
import { VOTE_STAGES } from './vote-round.js';

const hands = v.pipe(within([0, limits.hands], 'hands'), place);

/** What its values say of one another is asked in `roundProblem`. */
export const voteRound = object({
  question: name,
  mounts: v.array(name, 'must be a list'),
  places: v.array(place, 'must be a list'),
  sound: text(255),
  place: oneOf(['hand', 'layout']),
  noise: v.optional(oneOf(PLACE_KINDS)),
  model: modelName,
  sameLoudness: truth,
  day: v.pipe(text(10), v.regex(/^\d{4}-\d\d-\d\d$/, 'must be a day such as 2026-11-30')),
  seed: place,
  bench: name,
  stage: oneOf(VOTE_STAGES),
  hands: listOf(v.nullable(hands), limits.setups),
  seen: v.optional(truth),
  ended: v.optional(oneOf(['early', 'changed']))
});
