/** One linear equation, Σ coefficients·x = value. */
export interface LinearEquation {
  coefficients: readonly number[];
  value: number;
}

/** All solutions of a system: `one` of them, and what can be added to it. */
export interface Solutions {
  one: number[];
  /** A basis of what the equations leave open; empty where everything is determined. */
  open: number[][];
}

/** What counts as nothing in a system of coefficients near 1. */
const NOTHING = 1e-9;

/**
 * Solves a small system of linear equations as far as it goes, by Gauss and Jordan with the largest pivot of each column. An
 * equation that follows from those before it is left out, whether its value agrees or not.
 *
 * @param equations coefficients of the order of 1, `unknowns` each
 */
export function whatIsDetermined(equations: readonly LinearEquation[], unknowns: number): Solutions {
  const rows = equations.map(({ coefficients, value }) => [...coefficients, value]);
  /** The row that gives an unknown, by its column. */
  const pivots = new Map<number, number>();
  for (let column = 0; column < unknowns && pivots.size < rows.length; column++) {
    const at = pivots.size;
    let best = at;
    for (let row = at; row < rows.length; row++)
      if (Math.abs(rows[row][column]) > Math.abs(rows[best][column])) best = row;
    if (Math.abs(rows[best][column]) < NOTHING) continue;
    [rows[at], rows[best]] = [rows[best], rows[at]];
    const pivot = rows[at][column];
    rows[at] = rows[at].map((x) => x / pivot);
    for (let row = 0; row < rows.length; row++) {
      const factor = rows[row][column];
      if (row !== at && factor !== 0) rows[row] = rows[row].map((x, i) => x - factor * rows[at][i]);
    }
    pivots.set(column, at);
  }
  const one = Array.from({ length: unknowns }, (_, x) =>
    pivots.has(x) ? rows[pivots.get(x)!][unknowns] : 0
  );
  const open = Array.from({ length: unknowns }, (_, x) => x)
    .filter((x) => !pivots.has(x))
    .map((free) =>
      Array.from({ length: unknowns }, (_, x) =>
        x === free ? 1 : pivots.has(x) ? -rows[pivots.get(x)!][free] : 0
      )
    );
  return { one, open };
}

/** Whether all solutions give a combination of the unknowns the same value. */
export function isDetermined(combination: readonly number[], { open }: Solutions): boolean {
  return open.every((basis) => Math.abs(dot(combination, basis)) < NOTHING);
}

export function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, x, i) => sum + x * b[i], 0);
}
