import type { Decibels, Hertz } from '../../units.js';
import type { CurveLevel, ResponseBand, ResponseCurve } from '../response-curve.js';
import { frequencyText } from '../../format/frequency-text.js';
import { levelText } from '../../format/level-text.js';

/**
 * Level of a curve at a frequency, linear in dB over log f between its neighbours.
 * NaN outside the curve's grid and inside a gap; −∞ next to a neighbour of −∞.
 */
export function levelAt(frequency: Float64Array, levelDb: Float64Array, at: Hertz): Decibels {
  const last = frequency.length - 1;
  if (last < 0 || !(at >= frequency[0] && at <= frequency[last])) return NaN;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (frequency[middle] <= at) low = middle;
    else high = middle;
  }
  if (at === frequency[low]) return levelDb[low];
  if (at === frequency[high]) return levelDb[high];
  const a = levelDb[low];
  const b = levelDb[high];
  if (Number.isNaN(a) || Number.isNaN(b)) return NaN;
  if (a === -Infinity || b === -Infinity) return -Infinity;
  return a + ((b - a) * Math.log(at / frequency[low])) / Math.log(frequency[high] / frequency[low]);
}

/** The levels of all curves at a frequency, in the curves' own order. */
export function readout(curves: readonly ResponseCurve[], at: Hertz): CurveLevel[] {
  return curves.map((curve) => ({ curve, levelDb: levelAt(curve.frequency, curve.levelDb, at) }));
}

/** The band that holds a frequency; at a shared edge the upper one. */
export function bandAt(bands: readonly ResponseBand[] | null, at: Hertz): ResponseBand | null {
  return bands?.findLast((band) => band.low <= at && at <= band.high) ?? null;
}

/** What becomes of a band: "14 dB lost", "3 dB gained", "nothing lost"; null where it holds no sound. */
export function lossText(band: Pick<ResponseBand, 'outlineDb' | 'filledDb'>): string | null {
  if (!Number.isFinite(band.outlineDb) || Number.isNaN(band.filledDb)) return null;
  if (band.filledDb === -Infinity) return 'all lost';
  const lost = Math.round(band.outlineDb - band.filledDb);
  if (lost === 0) return 'nothing lost';
  return lost > 0 ? `${lost} dB lost` : `${-lost} dB gained`;
}

/** The readout as one sentence for those who listen to it, the heard curve first; `source` is what the band is a part of, `zeroDb` as in `levelText`. */
export function readoutText(
  levels: readonly CurveLevel[],
  band: ResponseBand | null,
  at: Hertz,
  source: string,
  zeroDb?: Decibels
): string {
  const heard = levels.filter((level) => level.curve.heard);
  const others = levels.filter((level) => !level.curve.heard);
  const parts = [...heard, ...others].map(
    ({ curve, levelDb }) => `${curve.name} ${levelText(levelDb, zeroDb)}${curve.heard ? ', heard' : ''}`
  );
  const loss = band && lossText(band);
  if (loss) parts.push(`this band of ${source}: ${loss}`);
  return `${frequencyText(at)}: ${parts.join('; ')}`;
}
