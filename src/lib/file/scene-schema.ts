import * as v from 'valibot';
import { OPENING_MODEL } from './bench-file.js';
import { BENCH_FILE_LIMITS as limits } from './bench-file-limits.js';
import { listener } from './listener-schema.js';
import { SCENE_SHOWS } from './scene.js';
import { modelName, name, object, oneOf, text, truth, within } from './schema-parts.js';
import { setup } from './setup-schema.js';
import { sound } from './sound-schema.js';

/** What its values say of one another is asked in `sceneProblem`. */
export const scene = object({
  name,
  minutes: v.optional(within(limits.sceneMinutes, 'minutes'), 1),
  shows: oneOf(SCENE_SHOWS),
  heard: v.optional(
    object({
      setup,
      sound,
      listener,
      model: v.optional(modelName, OPENING_MODEL),
      sameLoudness: v.optional(truth, false)
    })
  ),
  frequency: v.optional(within(limits.sceneFrequency, 'Hz')),
  text: v.optional(
    v.pipe(
      text(limits.sceneText),
      v.check(
        (lines) => lines.split('\n').length <= limits.sceneLines,
        `must be at most ${limits.sceneLines} lines`
      )
    )
  ),
  notes: v.optional(text(limits.notes), '')
});
