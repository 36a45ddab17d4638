import { checkSpeaker } from '../acoustics/mounts/check-installation.js';
import type { Speaker } from '../acoustics/speaker/speaker.js';
import { SPEAKERS } from '../acoustics/speaker/speakers.js';
import { BENCH_FILE_LIMITS } from '../file/bench-file-limits.js';
import type { BenchFile, BenchSpeaker } from '../file/bench-file.js';

/** What the copy of a speaker is called behind its name. */
const AGAIN = ' again';

/** The reference sizes, and over them what a bench has made of them and whatever else it brought. */
export function speakersToChoose({ speakers }: Pick<BenchFile, 'speakers'>): Record<string, BenchSpeaker> {
  return { ...SPEAKERS, ...speakers };
}

/** A speaker as it can be heard; null where it has no motor values. */
export function heardSpeaker({ motor, ...rest }: BenchSpeaker): Speaker | null {
  return motor ? { ...rest, motor } : null;
}

/** The places on the shelf of the mounts that have a speaker, counted from 0. */
export function mountsWith({ setups }: Pick<BenchFile, 'setups'>, key: string): number[] {
  return setups.flatMap((setup, i) => (setup.speaker === key ? [i] : []));
}

/**
 * The bench with one speaker of other values, kept under its key.
 *
 * @throws RangeError with one sentence where such a speaker cannot be, or where the bench is full
 */
export function withSpeaker(file: BenchFile, key: string, speaker: BenchSpeaker): BenchFile {
  // Without a motor of its own any will do: only the sizes are asked about.
  checkSpeaker({ ...speaker, motor: speaker.motor ?? SPEAKERS.oval.motor });
  const speakers = { ...file.speakers, [key]: speaker };
  if (Object.keys(speakers).length > BENCH_FILE_LIMITS.speakers)
    throw new RangeError(`a bench holds ${BENCH_FILE_LIMITS.speakers} speakers: delete one first`);
  return { ...file, speakers };
}

/** The bench with a copy of a speaker, and the copy’s key. */
export function withCopy(file: BenchFile, key: string): { file: BenchFile; key: string } {
  const { name, ...rest } = speakersToChoose(file)[key];
  const copy = freeKey(file, key);
  const named = { name: `${name.slice(0, BENCH_FILE_LIMITS.name - AGAIN.length)}${AGAIN}`, ...rest };
  return { file: withSpeaker(file, copy, named), key: copy };
}

/** The bench without a speaker, which no mount has. */
export function withoutSpeaker(file: BenchFile, key: string): BenchFile {
  if (mountsWith(file, key).length > 0)
    throw new RangeError(
      `the speaker “${file.speakers[key].name}” is in a mount: give that another one first`
    );
  const speakers = { ...file.speakers };
  delete speakers[key];
  return { ...file, speakers };
}

/** The bench with speakers from another one, each under a key of its own. */
export function withTaken(file: BenchFile, taken: Readonly<Record<string, BenchSpeaker>>): BenchFile {
  return Object.entries(taken).reduce(
    (bench, [key, speaker]) => withSpeaker(bench, freeKey(bench, key), speaker),
    file
  );
}

/** Whether a bench has this very speaker already. */
export function hasSpeaker(file: BenchFile, speaker: BenchSpeaker): boolean {
  const text = JSON.stringify(speaker);
  return Object.values(speakersToChoose(file)).some((one) => JSON.stringify(one) === text);
}

/** A key like this one that no speaker of the bench and none of the reference sizes has. */
function freeKey(file: BenchFile, like: string): string {
  const taken = speakersToChoose(file);
  if (!(like in taken)) return like;
  const stem = like.replace(/-\d+$/, '').slice(0, BENCH_FILE_LIMITS.name - 4);
  let number = 2;
  while (`${stem}-${number}` in taken) number++;
  return `${stem}-${number}`;
}
