import type { SoundKnob, SoundKnobs } from '../../../../src/lib/sounds/knob.js';

/** A sound with one knob after another at either end of its range, the others as they are. */
export function knobEnds<S extends object>(knobs: SoundKnobs, sound: S): { what: string; sound: S }[] {
  return Object.entries(knobs).flatMap(([key, knob]) =>
    ends(knob).map((value) => ({ what: `${key} ${String(value)}`, sound: { ...sound, [key]: value } }))
  );
}

function ends(knob: SoundKnob): unknown[] {
  switch (knob.type) {
    case 'number':
      return [knob.min, knob.max];
    case 'switch':
      return [false, true];
    case 'choice':
      return [...knob.options];
    case 'chord':
      return [
        [knob.lowest],
        [knob.highest],
        Array.from({ length: knob.most }, (_, i) => knob.lowest + i),
        Array.from({ length: knob.most }, (_, i) => knob.highest - i),
        Array.from({ length: knob.fewest }, () => 0)
      ];
  }
}
