import * as v from 'valibot';
import { type GeneratedSound, knobsOfKind, SOUND_KIND_NAMES } from '../sounds/kinds.js';
import { knobFault, type SoundKnob } from '../sounds/knob.js';
import { usualSound } from '../sounds/roster.js';

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
export function soundEntries(name: v.GenericSchema<string, string>): v.ObjectEntries[] {
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
