import type { Air } from '../air.js';
import { ALL_RELATIONS, deriveSheet, formulasOf, type Relations } from './derive-sheet.js';
import { SHEET_FIGURES, SHEET_NAMES, type Sheet, type SheetFigure } from './sheet-relations.js';

/** A figure of the sheet beside what the figures that are trusted more make of it. */
export interface SheetCheck {
  figure: SheetFigure;
  given: number;
  /** What the others make of it; null where no speaker has it beside them. */
  derived: number | null;
}

/** One that disagrees by more than `sheetTolerance`. */
export interface Contradiction extends SheetCheck {
  /** The figures that it was derived from, and by which formulas. */
  from: SheetFigure[];
  formulas: string[];
}

/** What a maker's sheet says. */
export interface SheetReading {
  /** Every figure that the sheet determines; of what contradicts, what is trusted more. */
  known: Sheet;
  /** The figures that others give, too, and which agree with them. */
  agreeing: SheetCheck[];
  contradictions: Contradiction[];
  /** How many more figures it takes, and which would help; none where all is known. */
  lacking: number;
  wanted: SheetFigure[];
}

/** As a ratio, how far figures may disagree that were rounded, each by itself: 5 %, and 2 dB for a sensitivity (our choice). */
export function sheetTolerance(figure: SheetFigure): number {
  return isSensitivity(figure) ? 10 ** (2 / 20) : 1.05;
}

export function isSensitivity(figure: SheetFigure): boolean {
  return figure === 'sensitivity' || figure === 'sensitivityPerWatt';
}

/**
 * Reads a maker's sheet of any figures (`SHEET_RELATIONS`): what follows from them, where they disagree, what is missing. Figures are taken
 * in the order of `SHEET_FIGURES`; one that follows from those before it is checked against them and not used.
 *
 * @throws RangeError where a figure is not above 0
 */
export function readSheet(sheet: Sheet, air: Air): SheetReading {
  const agreeing: SheetCheck[] = [];
  const contradictions: Contradiction[] = [];
  let used: Sheet = {};
  let found = deriveSheet(used, air);
  for (const figure of SHEET_FIGURES) {
    const given = sheet[figure];
    if (given === undefined) continue;
    if (!(given > 0 && given < Infinity))
      throw new RangeError(`${SHEET_NAMES[figure]} must be above 0, got ${given}`);
    const derived = found.known[figure];
    if (derived !== undefined) {
      const check = { figure, given, derived };
      if (agree(check)) agreeing.push(check);
      else contradictions.push({ ...check, ...howDerived(used, air, figure) });
      continue;
    }
    const more = { ...used, [figure]: given };
    const then = deriveSheet(more, air);
    if (then.impossible) {
      contradictions.push({ figure, given, derived: null, ...howImpossible(more, air, figure) });
      continue;
    }
    [used, found] = [more, then];
  }
  const wanted = SHEET_FIGURES.filter((figure) => found.known[figure] === undefined);
  return { known: found.known, agreeing, contradictions, lacking: found.lacking, wanted };
}

function agree({ figure, given, derived }: SheetCheck & { derived: number }): boolean {
  return Math.max(given / derived, derived / given) <= sheetTolerance(figure);
}

type How = Pick<Contradiction, 'from' | 'formulas'>;

function howDerived(used: Sheet, air: Air, figure: SheetFigure): How {
  return fewest(used, (sheet, by) => deriveSheet(sheet, air, by).known[figure] !== undefined);
}

function howImpossible(sheet: Sheet, air: Air, figure: SheetFigure): How {
  const how = fewest(sheet, (some, by) => deriveSheet(some, air, by).impossible);
  return { ...how, from: how.from.filter((one) => one !== figure) };
}

/** The fewest formulas, and then figures, for which something still holds that holds for all. */
function fewest(sheet: Sheet, holds: (sheet: Sheet, by: Relations) => boolean): How {
  let by = ALL_RELATIONS;
  let least = Infinity;
  for (let set = 1; set < 2 ** (ALL_RELATIONS.products.length + 1) && least > 1; set++) {
    const some: Relations = {
      products: ALL_RELATIONS.products.filter((_, i) => set & (1 << i)),
      qSum: (set & (1 << ALL_RELATIONS.products.length)) !== 0
    };
    const size = formulasOf(some).length;
    if (size < least && holds(sheet, some)) [by, least] = [some, size];
  }
  let left = sheet;
  for (const figure of SHEET_FIGURES) {
    const { [figure]: dropped, ...rest } = left;
    if (dropped !== undefined && holds(rest, by)) left = rest;
  }
  return { from: SHEET_FIGURES.filter((figure) => left[figure] !== undefined), formulas: formulasOf(by) };
}
