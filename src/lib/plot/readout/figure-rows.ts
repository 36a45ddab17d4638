import type { ResponseBand, ResponseCurve } from '../response-curve.js';
import { frequencyText } from '../../format/frequency-text.js';
import { levelText } from '../../format/level-text.js';
import type { PictureRange } from '../scales/picture-range.js';
import { bandAt, lossText, readout } from './readout.js';
import { thirdOctaves } from '../scales/third-octaves.js';

/** Heads of the table behind the response picture: the frequency, every curve, and the bands of `source` where there are any. */
export function figureHeads(curves: readonly ResponseCurve[], source: string | null): string[] {
  const names = curves.map(({ numeral, name, heard }) =>
    `${numeral} ${name}${heard ? ', heard' : ''}`.trim()
  );
  return ['frequency', ...names, ...(source === null ? [] : [`${source} in this band`])];
}

/** Its rows, a third octave apart. */
export function figureRows(
  curves: ResponseCurve[],
  bands: ResponseBand[] | null,
  { from, to, zeroDb }: PictureRange
): string[][] {
  return thirdOctaves(from, to).map((frequency) => {
    const band = bandAt(bands, frequency);
    const levels = readout(curves, frequency).map(({ levelDb }) => levelText(levelDb, zeroDb));
    return [frequencyText(frequency), ...levels, ...(bands ? [(band && lossText(band)) ?? 'no sound'] : [])];
  });
}
