import type { Installation } from '../installation.js';
import { LIMITS } from './check-installation.js';
import { magnetBelow } from './board.js';
import { upToMillimetre, type Knob } from './size-knobs.js';
import type { Metres } from '../../units.js';

/** The height that the knob reaches; a file may bring a larger one, and the knob then reaches that far. */
const REACH: Metres = 0.1;
/** What it leaves between a magnet and the board. */
const CLEAR: Metres = 0.001;

/** The knob of a mount's height over its board; null in the hand. */
export function boardKnob({ speaker, mount, board }: Installation): Knob<'above'> | null {
  if (!board) return null;
  const { above, facing } = board;
  const magnet = magnetBelow(speaker, mount, facing);
  const least = Math.max(LIMITS.above[0], magnet > 0 ? upToMillimetre(magnet + CLEAR) : 0);
  return {
    key: 'above',
    label: 'over the board',
    min: Math.min(least, above),
    max: Math.max(REACH, above),
    step: 0.001,
    value: above
  };
}
