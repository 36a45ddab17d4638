import type { Installation } from '../installation.js';
import { boardKnob } from './board-knob.js';
import { openingKnobs, type OpeningKey } from './opening-knobs.js';
import { knobsOf, type Knob, type SizeKey } from './size-knobs.js';

/** Everything that a knob can turn: the mount's own sizes, those of its openings, and its height over the board. */
export type KnobKey = SizeKey | OpeningKey | 'above';

/** All knobs of an installation as it stands, the mount's own first. */
export function everyKnob(installation: Installation): Knob<KnobKey>[] {
  const board = boardKnob(installation);
  return [...knobsOf(installation), ...(board ? [board] : []), ...openingKnobs(installation)];
}
