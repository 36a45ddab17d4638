import type { Speaker } from '../../acoustics/speaker/speaker.js';
import { SPEAKERS } from '../../acoustics/speaker/speakers.js';
import type { Candidate } from '../../fitting/candidate.js';
import { BENCH_FILE_LIMITS } from '../../file/bench-file-limits.js';
import type { BenchFile, Setup } from '../../file/bench-file.js';
import { installationOf } from '../../file/installation-of.js';
import { priceOf } from '../price.js';
import type { Question } from '../wave-jobs.js';

/** Every speaker that can be tried, by its key: the reference sizes, and over them those of the bench that have motor values. */
export function drawerOf({ speakers }: Pick<BenchFile, 'speakers'>): Record<string, Speaker> {
  return Object.fromEntries(
    Object.entries({ ...SPEAKERS, ...speakers }).flatMap(([key, { motor, ...rest }]) =>
      motor ? [[key, { ...rest, motor }]] : []
    )
  );
}

/** What a candidate costs, speakers and mount; null where the price of its speaker is not told. */
export function priceOfCandidate(
  drawer: Readonly<Record<string, Speaker>>,
  candidate: Candidate
): number | null {
  const price = priceOf({ speakers: drawer }, setupOfCandidate(candidate));
  return price && price.speakers + price.mount;
}

/** A candidate as it stands on the shelf. */
export function setupOfCandidate({ name, speaker, mount, turn, above, facing, second }: Candidate): Setup {
  return {
    name: name.slice(0, BENCH_FILE_LIMITS.name),
    speaker,
    mount,
    turn,
    above,
    ...(facing === 'down' && { facing }),
    ...(second && { second }),
    notes: ''
  };
}

/** What is asked of a candidate where one listens: the same as of the setup that it becomes. */
export function questionOfCandidate(
  { air, listener }: Pick<BenchFile, 'air' | 'listener'>,
  drawer: Readonly<Record<string, Speaker>>,
  candidate: Candidate
): Question {
  const { speaker } = candidate;
  const bench = { speakers: { [speaker]: drawer[speaker] }, listener };
  return { installation: installationOf(bench, setupOfCandidate(candidate)), air, listener };
}
