import { angleText } from '../../format/angle-text.js';
import type { Decibels, Degrees } from '../../units.js';
import { levelText } from '../../format/level-text.js';

/** Degrees between the rows of the table. */
const STEP: Degrees = 15;

/** The level at an angle: that of the nearest angle there is, going round; NaN where there is none. */
export function levelAt(anglesDeg: Float64Array, levelDb: Float64Array, angleDeg: Degrees): Decibels {
  let [nearest, level] = [Infinity, NaN];
  anglesDeg.forEach((each, i) => {
    const off = Math.abs(((((each - angleDeg + 180) % 360) + 360) % 360) - 180);
    if (off < nearest) [nearest, level] = [off, levelDb[i]];
  });
  return level;
}

/** The figures as a table: one row every 15° from −180° to 180°, or as far as `farthest` either way. */
export function polarRows(
  anglesDeg: Float64Array,
  curves: readonly Float64Array[],
  farthest: Degrees = 180
): string[][] {
  return Array.from({ length: (2 * farthest) / STEP + 1 }, (_, i) => {
    const angleDeg = i * STEP - farthest;
    return [
      angleText(angleDeg),
      ...curves.map((levelDb) => levelText(levelAt(anglesDeg, levelDb, angleDeg)))
    ];
  });
}

/** The picture in a sentence: where it is heard, and where it is loudest. */
export function polarText(
  anglesDeg: Float64Array,
  levelDb: Float64Array | null,
  listenerDeg: Degrees
): string {
  if (!levelDb) return `no figures yet; the listener is at ${angleText(listenerDeg)}`;
  let loudest = 0;
  levelDb.forEach((level, i) => {
    if (level > levelDb[loudest]) loudest = i;
  });
  const here = levelText(levelAt(anglesDeg, levelDb, listenerDeg));
  return `${here} at the listener, ${angleText(listenerDeg)}; loudest ${levelText(levelDb[loudest])} at ${angleText(anglesDeg[loudest])}`;
}
