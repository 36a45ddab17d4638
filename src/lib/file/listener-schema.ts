import * as v from 'valibot';
import { LIMITS } from '../acoustics/limits.js';
import { object, oneOf, truth, within } from './schema-parts.js';

/** Where one listens: in the hand, or on the layout with its board below. */
export const listener = object({
  angleDeg: v.optional(within(LIMITS.angleDeg, 'degrees'), 0),
  plane: v.optional(oneOf(['length', 'width']), 'width'),
  distance: v.optional(within(LIMITS.distance, 'm')),
  board: v.optional(truth)
});
