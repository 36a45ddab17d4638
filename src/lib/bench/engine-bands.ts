import type { Air } from '../acoustics/air.js';
import type { Installation } from '../acoustics/installation.js';
import type { Listener } from '../acoustics/listener.js';
import { ruleOfThumb } from '../acoustics/rule-of-thumb.js';
import { bandLevels } from '../listening/band-levels.js';
import type { SoundFigures } from '../listening/sound-figures.js';
import { thirdOctaveBands } from '../numeric/third-octave-bands.js';
import type { EngineBand } from '../plot/engine-curve.js';
import { PICTURE } from './stand.js';

const BANDS = thirdOctaveBands(PICTURE.from, PICTURE.to);

/** The sound's third octaves, and what of each the mount lets through; a mount that cannot be built lets nothing. */
export function engineBands(
  { power, binWidth }: SoundFigures,
  installation: Installation | null,
  air: Air,
  listener: Listener
): EngineBand[] {
  const outline = bandLevels(power, binWidth, BANDS);
  const filled = installation
    ? bandLevels(power, binWidth, BANDS, powerGain(installation, air, listener, power.length, binWidth))
    : outline.map(() => -Infinity);
  return BANDS.map(({ lower, upper, label }, i) => ({
    low: lower,
    high: upper,
    label,
    outlineDb: outline[i],
    filledDb: filled[i]
  }));
}

/** |H|² on evenly spaced bins from 0. */
export function powerGain(
  installation: Installation,
  air: Air,
  listener: Listener,
  bins: number,
  binWidth: number
): Float64Array {
  const frequency = Float64Array.from({ length: bins }, (_, k) => k * binWidth);
  const { re, im } = ruleOfThumb(installation, air, listener, frequency, 'full');
  return re.map((real, k) => real * real + im[k] * im[k]);
}
