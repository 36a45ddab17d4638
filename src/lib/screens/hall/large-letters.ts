/** Width of an average letter of the display face, its words set tight, in heights of the text; from trying out, on the wide side. */
const LETTER = 0.5;
/** Height of a line, and of one left empty, in heights of the text. */
const LINE = 1.25;
const EMPTY = 0.5;

/** So much smaller than the largest that looks well may letters be for a line to stand in one row, as it was written. */
const UNBROKEN = 0.5;

/**
 * The largest height of letters in which these lines stand in so much room: each in one row where that leaves them large, else broken
 * between words.
 *
 * @param most the largest that looks well
 * @param least below this nothing can be read from the last row: it is returned even where the words need more room
 */
export function largeLetters(
  lines: readonly string[],
  { width, height, least, most }: { width: number; height: number; least: number; most: number }
): number {
  const longest = Math.max(...lines.map((line) => line.length));
  const unbroken = Math.min(most, width / (LETTER * longest));
  let size = unbroken >= UNBROKEN * most ? unbroken : most;
  while (size > least && !stands(lines, size, width, height)) size *= 0.97;
  return Math.max(size, least);
}

function stands(lines: readonly string[], size: number, width: number, height: number): boolean {
  const inALine = width / (LETTER * size);
  const longest = Math.max(...lines.flatMap((line) => line.split(' ')).map((word) => word.length));
  const needed = lines.reduce((sum, line) => sum + (line.trim() ? rows(line, inALine) : EMPTY), 0);
  return longest <= inALine && needed * LINE * size <= height;
}

/** How many rows a line takes where so many letters stand side by side. */
function rows(line: string, inALine: number): number {
  let [count, filled] = [1, 0];
  for (const { length } of line.trim().split(/\s+/)) {
    const after = filled === 0 ? length : filled + 1 + length;
    if (after <= inALine || filled === 0) filled = after;
    else [count, filled] = [count + 1, length];
  }
  return count;
}
