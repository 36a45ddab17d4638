import type { Candidate } from '../../fitting/candidate.js';
import type { Fitted } from '../../fitting/fit.js';
import { ranked, type Measured, type MeasureName } from './ranking.js';

/** So many of those that lead are looked at more closely. */
const LEADING = 6;

/** What a box that is larger gives more or less of: of the others the sizes between two are known without trying. */
const GROWS_WITH_SIZE: readonly MeasureName[] = ['level', 'deep', 'even', 'loudest'];

/**
 * What is tried first: everything that has no sizes, and of the sizes of each place the least and the largest; of the roomiest place of each speaker
 * in each way one between.
 */
export function firstToTry({ candidates, ladders }: Pick<Fitted, 'candidates' | 'ladders'>): Candidate[] {
  const byKey = new Map(candidates.map((candidate) => [candidate.key, candidate]));
  const later = new Set(ladders.flat());
  const kinds = new Set<string>();
  for (const ladder of ladders) {
    later.delete(ladder[0]);
    later.delete(ladder[ladder.length - 1]);
    const { speaker, way, second } = byKey.get(ladder[0])!;
    const kind = [speaker, way, second !== undefined].join();
    if (!kinds.has(kind)) later.delete(ladder[middle(0, ladder.length - 1)]);
    kinds.add(kind);
  }
  return candidates.filter(({ key }) => !later.has(key));
}

/**
 * What is tried next: of those that lead by a measure, the sizes half-way to the next one on their ladder that was tried, on both sides. None
 * where every neighbour of theirs is known: then no size between beats them by more than the error (`ladder`).
 *
 * @param lines what was tried
 */
export function nextToTry(
  { candidates, ladders }: Pick<Fitted, 'candidates' | 'ladders'>,
  lines: readonly Measured[],
  refused: readonly string[],
  by: MeasureName
): Candidate[] {
  if (!GROWS_WITH_SIZE.includes(by)) return [];
  const tried = new Set([...lines.map(({ key }) => key), ...refused]);
  const next = new Set<string>();
  const leading = ranked(lines, by)
    .filter(({ place }) => place === 1)
    .slice(0, LEADING);
  for (const { line } of leading)
    for (const ladder of ladders) {
      const at = ladder.indexOf(line.key);
      if (at < 0) continue;
      for (const step of [-1, 1]) {
        let other = at + step;
        while (other >= 0 && other < ladder.length && !tried.has(ladder[other])) other += step;
        if (Math.abs(other - at) > 1 && other >= 0 && other < ladder.length)
          next.add(ladder[middle(Math.min(at, other), Math.max(at, other))]);
      }
    }
  return candidates.filter(({ key }) => next.has(key));
}

function middle(from: number, until: number): number {
  return Math.floor((from + until) / 2);
}
