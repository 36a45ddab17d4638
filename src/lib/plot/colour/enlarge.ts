/** A picture of single values, row by row. */
export interface ValueGrid {
  columns: number;
  rows: number;
  values: Float32Array;
}

/**
 * Fills a larger grid over the same area by linear interpolation between the middles of pixels; beyond the outermost
 * middles the value stays. A wave enlarged before it is coloured keeps smooth lines where it is 0, which coloured pixels
 * would not.
 */
export function enlarge(from: ValueGrid, into: ValueGrid): void {
  const across = places(from.columns, into.columns);
  const down = places(from.rows, into.rows);
  const { values } = from;
  for (let row = 0, p = 0; row < into.rows; row++) {
    const above = down.first[row] * from.columns;
    const below = above + (from.rows > 1 ? from.columns : 0);
    const low = down.share[row];
    for (let column = 0; column < into.columns; column++, p++) {
      const left = across.first[column];
      const right = from.columns > 1 ? left + 1 : left;
      const share = across.share[column];
      const up = values[above + left] + share * (values[above + right] - values[above + left]);
      const lower = values[below + left] + share * (values[below + right] - values[below + left]);
      into.values[p] = up + low * (lower - up);
    }
  }
}

/** For every pixel of the larger grid the first of the two between which it lies, and how far on. */
function places(from: number, into: number): { first: Int32Array; share: Float64Array } {
  const first = new Int32Array(into);
  const share = new Float64Array(into);
  for (let i = 0; i < into; i++) {
    const at = Math.max(0, Math.min(from - 1, ((i + 0.5) * from) / into - 0.5));
    first[i] = Math.min(Math.floor(at), Math.max(0, from - 2));
    share[i] = at - first[i];
  }
  return { first, share };
}
