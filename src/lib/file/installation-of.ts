import type { Installation } from '../acoustics/installation.js';
import { usualAbove, type Board } from '../acoustics/mounts/board.js';
import { SPEAKERS } from '../acoustics/speaker/speakers.js';
import type { BenchFile, BenchSpeaker, Setup } from './bench-file.js';

/**
 * What the models take, from a setup of a bench; over its board, if the bench has one. `ideal` asks for the mount alone, whose response does not
 * depend on the motor: there a speaker without motor values stands in with those of the 28 × 40 mm oval.
 * @throws RangeError where the speaker's own response is asked for and its motor values are not there.
 */
export function installationOf(
  bench: Pick<BenchFile, 'speakers'> & Partial<Pick<BenchFile, 'listener'>>,
  setup: Setup,
  response: 'ideal' | 'full' = 'full'
): Installation {
  const speaker = bench.speakers[setup.speaker];
  const motor = speaker.motor ?? (response === 'ideal' ? SPEAKERS.oval.motor : null);
  if (!motor)
    throw new RangeError(
      `speaker "${speaker.name}" has no motor values, so only its mount alone (ideal) can be predicted`
    );
  const { mount, turn, second } = setup;
  const board = bench.listener?.board ? { board: boardUnder(setup, speaker) } : {};
  return { speaker: { ...speaker, motor }, mount, turn, ...board, ...(second && { second }) };
}

function boardUnder({ mount, above, facing = 'up' }: Setup, speaker: BenchSpeaker): Board {
  return { above: above ?? usualAbove(speaker, mount, facing), facing };
}
