import type { Listener } from '../../../acoustics/listener.js';
import type { Lift } from '../../../acoustics/speaker/lift.js';
import type { Stand } from '../../../evaluation/stand.js';
import { distanceWords } from '../../../format/distance-words.js';
import { inDigits } from '../../../format/in-digits.js';
import { shortened } from '../../../format/shortened.js';

/** Letters of a speaker's name that there is room for. */
const ROOM = 24;

/** What of a stand says which speaker it has, and by what factor that is more sensitive than the one of 0 dB. */
type Driven = Pick<Stand, 'setup' | 'installation' | 'computed'>;

/** Whether the mounts on the shelf have different speakers. */
export function speakersDiffer(stands: readonly Pick<Stand, 'setup'>[]): boolean {
  return stands.some(({ setup }) => setup.speaker !== stands[0].setup.speaker);
}

function nameOf({ installation }: Driven): string {
  return shortened(installation.speaker.name, ROOM);
}

/** What the line at 0 dB is. `against`: the stand that levels are written against. */
export function zeroWords(stands: readonly Driven[], against: Driven): string {
  return speakersDiffer(stands)
    ? `the speaker “${nameOf(against)}” in an endless plate`
    : 'the same speaker in an endless plate';
}

/** Where a level is told that has a distance: far away it is told for 1 m. */
export function atDistance({ distance }: Pick<Listener, 'distance'>, inches: boolean): string {
  return distance === undefined ? 'at 1 m' : `at ${distanceWords(distance, inches)}`;
}

/** What is lifted, by how much, and from where on down. */
export function liftWords({ gainDb, below }: Lift): string {
  return `low end lifted by ${inDigits(gainDb, 3)} dB below ${inDigits(below, 3)} Hz`;
}

/** Which speaker a stand has, and how sensitive it is beside that of 0 dB; null where all have the same. */
export function speakerWords(stand: Driven, stands: readonly Driven[]): string | null {
  if (!speakersDiffer(stands)) return null;
  const db = stand.computed ? 20 * Math.log10(stand.computed.answer.drive) : 0;
  const figure = Math.abs(db).toFixed(1);
  const than = figure === '0.0' ? '' : `, ${figure} dB ${db > 0 ? 'more' : 'less'} sensitive`;
  return `speaker “${nameOf(stand)}”${than}`;
}
