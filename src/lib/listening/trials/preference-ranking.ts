/** What comparisons in pairs say of all that were compared, each by its place. */
export interface PreferenceRanking {
  /** How often each was chosen. */
  won: number[];
  /** How often each was there to be chosen. */
  compared: number[];
  /** The worth of each; they add up to 1, and i is chosen before j with worth i/(worth i + worth j). Null where there is none. */
  worth: number[] | null;
}

const ENOUGH = 1e-12;
const ROUNDS = 100_000;

/**
 * Raw wins, and the worth of each after R. A. Bradley and M. E. Terry (Biometrika 39 (1952) 324), the maximum of the likelihood by the
 * MM iteration of D. R. Hunter (Ann. Stat. 32 (2004) 384, equation 3). It exists only where no group has won all its comparisons with
 * the rest (Hunter, assumption 1): from each there is a way to each other over wins. Otherwise the raw wins are all there is.
 *
 * @param wins wins[i][j]: how often i was chosen before j; a square of whole numbers from 0
 * @throws RangeError where it is no square, or holds something else
 */
export function preferenceRanking(wins: readonly (readonly number[])[]): PreferenceRanking {
  const all = wins.map((_, i) => i);
  for (const row of wins)
    if (row.length !== wins.length || row.some((count) => !(Number.isInteger(count) && count >= 0)))
      throw new RangeError(`wins must be ${wins.length} rows of as many whole numbers from 0, got ${row}`);
  const met = (i: number, j: number): number => (i === j ? 0 : wins[i][j] + wins[j][i]);
  const won = all.map((i) => all.reduce((sum, j) => sum + (i === j ? 0 : wins[i][j]), 0));
  const compared = all.map((i) => all.reduce((sum, j) => sum + met(i, j), 0));
  if (!all.every((i) => reached(wins, i).size === wins.length)) return { won, compared, worth: null };

  let worth = all.map(() => 1 / wins.length);
  for (let round = 0; round < ROUNDS; round++) {
    const next = all.map(
      (i) => won[i] / all.reduce((sum, j) => sum + (j === i ? 0 : met(i, j) / (worth[i] + worth[j])), 0)
    );
    const whole = next.reduce((a, b) => a + b, 0);
    const scaled = next.map((each) => each / whole);
    const moved = Math.max(...scaled.map((each, i) => Math.abs(each - worth[i]) / each));
    worth = scaled;
    if (moved < ENOUGH) break;
  }
  return { won, compared, worth };
}

/** Whatever one goes to over wins. */
function reached(wins: readonly (readonly number[])[], from: number): Set<number> {
  const seen = new Set([from]);
  for (const i of seen) wins[i].forEach((count, j) => count > 0 && seen.add(j));
  return seen;
}
