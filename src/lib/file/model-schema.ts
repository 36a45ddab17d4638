import * as v from 'valibot';
import { MOST_OBSTACLES } from '../fitting/vehicle.js';
import { BENCH_FILE_LIMITS as limits } from './bench-file-limits.js';
import { finite, listOf, name, object, twoNumbers } from './schema-parts.js';
import { generatedSound } from './sound-schema.js';

/** The lower edge of a body over the board in HO (common practice), as with a shell. */
const USUAL_ABOVE = 0.014;

const obstacle = object({
  name: v.optional(name, 'box'),
  from: finite,
  length: finite,
  aside: v.optional(finite, 0),
  width: finite,
  above: v.optional(finite, 0),
  height: finite
});

/** What of a model is possible is asked when it is fitted out (fitting/). */
export const model = object({
  name: v.optional(name, 'My model'),
  length: finite,
  width: finite,
  height: finite,
  cab: v.optional(object({ length: finite, width: finite })),
  above: v.optional(finite, USUAL_ABOVE),
  chassis: v.optional(
    object({
      height: finite,
      slit: v.optional(finite, 0.001),
      ends: v.optional(finite, 0.001),
      depth: v.optional(finite, 0.001)
    })
  ),
  obstacles: v.optional(listOf(obstacle, MOST_OBSTACLES, 'boxes'), []),
  roof: v.optional(twoNumbers),
  floor: v.optional(twoNumbers),
  openings: v.optional(finite, 0),
  sounds: v.optional(listOf(generatedSound, limits.modelSounds, 'sounds'), [])
});
