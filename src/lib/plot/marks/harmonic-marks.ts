import type { Hertz } from '../../units.js';
import type { SpectrumMark } from './sound-spectrum.js';

/** A rate in a sound and how many of its multiples are worth a mark, itself among them. */
export interface RateToMark {
  frequency: Hertz;
  name: string;
  harmonics: number;
}

/** Multiples whose number is worth writing: all at first, where they stand far apart, then ever fewer. */
const numbered = [2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 32];

/** More lines than these across the picture would be a fence: each is a tick then. */
const MOST_LINES = 6;

/**
 * The marks of a sound's rates: each a strong line with its name; of the one that has more multiples than any other, these
 * as numbered ticks. The notes of a chord have as many each: numbers would not tell whose they are, and are left out. Marks above `to` are left out, and so are the rates that are not above 0.
 */
export function harmonicMarks(rates: readonly RateToMark[], to: Hertz): SpectrumMark[] {
  const shown = rates.filter(({ frequency }) => frequency > 0 && frequency <= to);
  const most = Math.max(...shown.map(({ harmonics }) => harmonics));
  const leading = shown.filter(({ harmonics }) => harmonics === most);
  return shown.flatMap((rate) => {
    const { frequency, name, harmonics } = rate;
    const own: SpectrumMark = { frequency, text: name, strong: shown.length <= MOST_LINES };
    if (rate !== leading[0] || leading.length > 1) return [own];
    const count = Math.min(harmonics, Math.floor(to / frequency));
    const others = Array.from({ length: count - 1 }, (_, i) => i + 2).map((n) => ({
      frequency: n * frequency,
      text: numbered.includes(n) ? `${n}×` : '',
      name: `${n} × ${name}`,
      strong: false
    }));
    return [own, ...others];
  });
}
