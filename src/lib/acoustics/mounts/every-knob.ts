import type { Installation } from '../installation.js';
import { boardKnob } from './board-knob.js';
import { openingKnobs, type OpeningKey } from './opening-knobs.js';
import { secondKnobs, type SecondKey } from './second-knobs.js';
import { knobsOf, type Knob, type SizeKey } from './size-knobs.js';

/** Everything that a knob can turn: the mount's own sizes, those of its openings, its height over the board, where a second speaker is. */
export type KnobKey = SizeKey | OpeningKey | SecondKey | 'above';

/** All knobs of an installation as it stands, the mount's own first. */
export function everyKnob(installation: Installation): Knob<KnobKey>[] {
  const board = boardKnob(installation);
  return [
    ...knobsOf(installation),
    ...(board ? [board] : []),
    ...openingKnobs(installation),
    ...secondKnobs(installation)
  ];
}
