import * as v from 'valibot';
import { type GeneratedSound, knobsOfKind, SOUND_KIND_NAMES } from '../sounds/kinds.js';
import { knobFault, type SoundKnob } from '../sounds/knob.js';
import { usualSound } from '../sounds/roster.js';
import type { BenchSound } from './bench-file.js';
import { choice, name, noList, strict, text, within } from './schema-parts.js';

/** One value of a sound; absent, it is that of the sound as it comes. */
function knobSchema(knob: SoundKnob, usual: unknown) {
  return v.optional(
    v.custom<unknown>(
      (value) => knobFault(knob, value) === null,
      ({ input }) => knobFault(knob, input)!.must
    ),
    usual as never
  );
}

/** The keys of every generated sound: its kind, its name and its knobs, all of them optional but the kind. */
function soundEntries(): v.ObjectEntries[] {
  return SOUND_KIND_NAMES.map((kind) => {
    const usual: GeneratedSound = usualSound(kind);
    const values = usual as unknown as Record<string, unknown>;
    return {
      kind: v.literal(kind),
      name: v.optional(name, usual.name),
      ...Object.fromEntries(
        Object.entries(knobsOfKind(kind)).map(([key, knob]) => [key, knobSchema(knob, values[key])])
      )
    };
  });
}

const generated = soundEntries().map(strict);
export const generatedSound = v.pipe(
  v.unknown(),
  noList,
  v.variant('kind', generated as v.VariantOptions<'kind'>, choice)
) as unknown as v.GenericSchema<unknown, GeneratedSound>;

/** Every generated sound, and the user's own file. */
const sounds = [
  ...generated,
  strict({
    kind: v.literal('recording'),
    name: text(255),
    from: v.optional(within([0, 86400], 's')),
    until: v.optional(within([0, 86400], 's'))
  })
];
export const sound = v.pipe(
  v.unknown(),
  noList,
  v.variant('kind', sounds as v.VariantOptions<'kind'>, choice)
) as unknown as v.GenericSchema<unknown, BenchSound>;
