import type { Installation } from '../acoustics/installation.js';
import { SPEAKERS } from '../acoustics/speaker/speakers.js';
import type { BenchFile, Setup } from './bench-file.js';

/**
 * What the models take, from a setup of a bench. `ideal` asks for the mount alone, whose response does not
 * depend on the motor: there a speaker without motor values stands in with those of the 28 × 40 mm oval.
 * @throws RangeError where the speaker's own response is asked for and its motor values are not there.
 */
export function installationOf(
  bench: Pick<BenchFile, 'speakers'>,
  setup: Setup,
  response: 'ideal' | 'full' = 'full'
): Installation {
  const speaker = bench.speakers[setup.speaker];
  const motor = speaker.motor ?? (response === 'ideal' ? SPEAKERS.oval.motor : null);
  if (!motor)
    throw new RangeError(
      `speaker "${speaker.name}" has no motor values, so only its mount alone (ideal) can be predicted`
    );
  return { speaker: { ...speaker, motor }, mount: setup.mount, turn: setup.turn };
}
