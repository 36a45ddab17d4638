import type { KnobKey } from '../../acoustics/mounts/every-knob.js';
import { isOpeningKey } from '../../acoustics/mounts/opening-knobs.js';
import type { Knob } from '../../acoustics/mounts/size-knobs.js';
import type { Metres } from '../../units.js';

/** A speaker that has less room than this to be moved in is left in the middle, and two fields less stand in the way. */
const ROOM: Metres = 0.004;

/** The sizes of a mount that have a field beside its drawing: all but those of its openings, and where the speaker is if it hardly can be anywhere else. */
export function shownKnobs(knobs: readonly Knob<KnobKey>[]): Knob<KnobKey>[] {
  return knobs.filter(
    ({ key, min, max, value }) =>
      !isOpeningKey(key) &&
      ((key !== 'offsetLength' && key !== 'offsetWidth') || value !== 0 || max - min >= ROOM)
  );
}
