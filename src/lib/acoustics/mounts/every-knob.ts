import type { Installation } from '../installation.js';
import { boardKnob } from './board-knob.js';
import { knobsOf, type Knob, type SizeKey } from './size-knobs.js';

/** Everything that a knob can turn: the mount's own sizes, and its height over the board. */
export type KnobKey = SizeKey | 'above';

/** All knobs of an installation as it stands, the mount's own first. */
export function everyKnob(installation: Installation): Knob<KnobKey>[] {
  const board = boardKnob(installation);
  return [...knobsOf(installation), ...(board ? [board] : [])];
}
