import type { Setup } from '../../../file/bench-file.js';
import type { Ahead, TurnedPair } from '../../../evaluation/turned-pair.js';
import { shortened } from '../../../format/shortened.js';

/** Letters of a mount's name that there is room for. */
const ROOM = 24;

/** What turns over in the ranking between hand and layout, in one sentence; empty where that is not known. */
export function turnWords(
  pair: TurnedPair | null | undefined,
  setups: readonly Pick<Setup, 'name' | 'mount'>[]
): string {
  if (pair === undefined) return '';
  if (pair === null) return 'The order is the same in the hand and on the layout.';
  const { hand, layout } = pair;
  const name = ({ index }: Ahead): string => nameOf(setups[index]);
  const by = ({ byDb }: Ahead): number => Math.round(byDb);
  return `In the hand ${name(hand)} is ${by(hand)} dB ahead of ${name(layout)}, on the layout ${by(layout)} dB behind it.`;
}

function nameOf({ name, mount }: Pick<Setup, 'name' | 'mount'>): string {
  const short = shortened(name.toLowerCase(), ROOM);
  return mount.kind === 'free' ? short : `the ${short}`;
}
