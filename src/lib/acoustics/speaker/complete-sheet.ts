import type { Air } from '../air.js';
import { readSheet } from './read-sheet.js';
import type { Sheet, SheetFigure } from './sheet-relations.js';
import type { Motor } from './speaker.js';

/** What is taken first where a sheet lacks something: what differs least from one small speaker to the next. */
const IN_TURN = ['re', 'qms', 'mms', 'bl', 'cms'] as const satisfies readonly (SheetFigure & keyof Motor)[];

/**
 * The figures that a sheet lacks, as few as will do, to be taken from another speaker: the coil's resistance first, then the mechanical Q, the
 * moving mass, the force factor, the compliance.
 *
 * @throws RangeError as `readSheet`
 */
export function completeSheet(sheet: Sheet, by: Motor, air: Air): SheetFigure[] {
  const taken: SheetFigure[] = [];
  let more = sheet;
  for (const figure of IN_TURN) {
    const { lacking, wanted } = readSheet(more, air);
    if (lacking === 0) break;
    if (!wanted.includes(figure)) continue;
    const then = { ...more, [figure]: by[figure] };
    // What cannot be beside the sheet is no help.
    if (readSheet(then, air).contradictions.length > readSheet(more, air).contradictions.length) continue;
    taken.push(figure);
    more = then;
  }
  return taken;
}
