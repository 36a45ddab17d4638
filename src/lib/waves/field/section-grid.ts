import type { Metres } from '../../units.js';

/** A section through the middle of all cones, seen from the side: columns from left to right, rows from top to bottom. */
export interface SectionGrid {
  /** `length`: the plane y = middle of the cone, x across; `width`: x = middle of the cone, y across. */
  plane: 'length' | 'width';
  /** The edges of the picture from the middle of the mount; plate or roof are at height 0, a shell hangs below. */
  left: Metres;
  right: Metres;
  bottom: Metres;
  top: Metres;
  columns: number;
  rows: number;
}

/** Where the middle of a column lies across, from the middle of the mount. */
export function columnAt({ left, right, columns }: SectionGrid, column: number): Metres {
  return left + ((column + 0.5) * (right - left)) / columns;
}

/** How high the middle of a row lies. */
export function rowAt({ top, bottom, rows }: SectionGrid, row: number): Metres {
  return top - ((row + 0.5) * (top - bottom)) / rows;
}

/** @throws RangeError for a grid without pixels or without extent */
export function checkGrid({ left, right, bottom, top, columns, rows }: SectionGrid): void {
  if (![columns, rows].every((n) => Number.isInteger(n) && n > 0))
    throw new RangeError(`a grid needs whole columns and rows, got ${columns} × ${rows}`);
  if (!(left < right && bottom < top && Number.isFinite(right - left + top - bottom)))
    throw new RangeError(`a grid needs an extent, got ${left} … ${right} by ${bottom} … ${top} m`);
}
