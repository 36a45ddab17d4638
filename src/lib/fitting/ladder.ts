import { leastWhere } from '../numeric/least-where.js';
import type { CubicMetres, Metres } from '../units.js';
import { tidy } from './candidate.js';

export const SIDES = ['length', 'width', 'depth'] as const;
/** Inside sizes of a box. */
export type Sides = Record<(typeof SIDES)[number], Metres>;

/**
 * From one size of a ladder to the next the air grows by so much at most, but for tenths of a millimetre. A third of an octave of air is a sixth in
 * the resonance at most (closed-box.md: fc ∝ √(1 + Vas/V)), so that what lies between two sizes is within a twelfth of an octave of one of
 * them: less than what two drafts are told apart by (docs/models/fitting.md).
 */
export const STEP = 2 ** (1 / 3);

/**
 * Sizes from the least to the largest box of a place, all sides growing together, each in even steps of its logarithm; whole tenths of a millimetre, of
 * which none is larger than the largest. The least comes first.
 *
 * @param most no side of it less than of `least`
 * @param bodies what the speakers take of the air, less than the least box
 */
export function ladder(least: Sides, most: Sides, bodies: CubicMetres): Sides[] {
  const air = (share: number): CubicMetres => insideOf(along(least, most, share)) - bodies;
  const steps = Math.ceil(Math.log(air(1) / air(0)) / Math.log(STEP) - 1e-9);
  const sizes = Array.from({ length: steps + 1 }, (_, i) => {
    const wanted = air(0) * (air(1) / air(0)) ** (i / Math.max(1, steps));
    const share = i === 0 ? 0 : i === steps ? 1 : shareOf(air, wanted);
    return inTenths(along(least, most, share), least);
  });
  return sizes.filter((size, i) => i === 0 || insideOf(size) > insideOf(sizes[i - 1]));
}

function along(least: Sides, most: Sides, share: number): Sides {
  const side = (key: keyof Sides): Metres => least[key] * (most[key] / least[key]) ** share;
  return { length: side('length'), width: side('width'), depth: side('depth') };
}

/** Where along the way so much air is: it grows all the way. */
function shareOf(air: (share: number) => CubicMetres, wanted: CubicMetres): number {
  return leastWhere([0, 1], 1e-9, (share) => air(share) >= wanted);
}

function inTenths(exact: Sides, least: Sides): Sides {
  const side = (key: keyof Sides): Metres =>
    tidy(Math.max(least[key], Math.floor(exact[key] * 1e4 + 1e-6) / 1e4));
  return { length: side('length'), width: side('width'), depth: side('depth') };
}

function insideOf({ length, width, depth }: Sides): CubicMetres {
  return length * width * depth;
}
