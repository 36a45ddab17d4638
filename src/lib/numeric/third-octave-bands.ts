import type { Hertz } from '../units.js';

export interface ThirdOctaveBand {
  /** The nominal frequency, by which the band is called. */
  nominal: Hertz;
  /** The name as written: "50", "800", "1.25 k", "16 k". */
  label: string;
  /** The exact midband frequency. */
  centre: Hertz;
  lower: Hertz;
  upper: Hertz;
}

const PREFERRED = [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8];

/** What the lab looks at, pictures and all, where nothing else is said: the third octaves of 50 Hz to 16 kHz. */
export const USUAL_RANGE: { readonly from: Hertz; readonly to: Hertz } = { from: 50, to: 16000 };

/** Half a third-octave band as a frequency ratio, G^{1/6} with G = 10^{3/10}. */
export const HALF_THIRD_OCTAVE = 10 ** 0.05;

/**
 * The third-octave bands whose nominal frequencies run from `from` to `to`: exact midband frequencies
 * 1000·G^{x/3} and edges a factor G^{±1/6} away, with the octave ratio G = 10^{3/10}
 * (IEC 61260-1:2014, 5.2 to 5.6 and annex E for the nominal frequencies; base ten).
 *
 * @param from nominal frequency of the first band
 * @param to nominal frequency of the last band
 * @throws RangeError unless 0 < from ≤ to, both finite
 */
export function thirdOctaveBands(
  from: Hertz = USUAL_RANGE.from,
  to: Hertz = USUAL_RANGE.to
): ThirdOctaveBand[] {
  if (!(from > 0 && to >= from && Number.isFinite(to)))
    throw new RangeError(`third-octave bands must run from above 0 Hz upwards, got ${from} … ${to}`);
  const first = Math.round(10 * Math.log10(from / 1000));
  const last = Math.round(10 * Math.log10(to / 1000));
  return Array.from({ length: last - first + 1 }, (_, i) => {
    const x = first + i;
    const decade = Math.floor(x / 10);
    const nominal = Number((PREFERRED[x - 10 * decade] * 10 ** (decade + 3)).toPrecision(3));
    const centre = 1000 * 10 ** (x / 10);
    const label = nominal >= 1000 ? `${nominal / 1000} k` : `${nominal}`;
    return { nominal, label, centre, lower: centre / HALF_THIRD_OCTAVE, upper: centre * HALF_THIRD_OCTAVE };
  });
}
