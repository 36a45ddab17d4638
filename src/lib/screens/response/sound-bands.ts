import { bandLevels } from '../../listening/band-levels.js';
import type { SoundFigures } from '../../listening/sound-figures.js';
import { thirdOctaveBands } from '../../numeric/third-octave-bands.js';
import type { ResponseBand } from '../../plot/response-curve.js';
import type { Answer } from '../../evaluation/answer.js';
import { powerGain } from '../../evaluation/power-gain.js';

const BANDS = thirdOctaveBands();

/**
 * The sound's third octaves, and what of each the mount lets through; a mount that cannot be built lets nothing.
 *
 * @param real against the whole sound in place of full scale: so much below what the axis of real levels says at 0 dB
 */
export function soundBands(
  { power, binWidth }: Pick<SoundFigures, 'power' | 'binWidth'>,
  answer: Answer | null,
  real = false
): ResponseBand[] {
  const whole = real ? 10 * Math.log10(power.reduce((sum, each) => sum + each, 0)) : 0;
  const outline = bandLevels(power, binWidth, BANDS);
  const filled = answer
    ? bandLevels(power, binWidth, BANDS, powerGain(answer, power.length, binWidth))
    : outline.map(() => -Infinity);
  return BANDS.map(({ lower, upper, label }, i) => ({
    low: lower,
    high: upper,
    label,
    outlineDb: outline[i] - whole,
    filledDb: filled[i] - whole
  }));
}
