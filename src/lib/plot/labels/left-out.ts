import type { Hertz } from '../../units.js';
import { frequencyText } from '../../format/frequency-text.js';
import type { LaneLabel, LaneLine } from './lane-labels.js';

/** What found no room above the drawing, in words for the line under it. */
export function leftOut(
  lines: readonly (LaneLine & { frequency: Hertz })[],
  labels: readonly (LaneLabel | null)[]
): string[] {
  return lines.flatMap(({ frequency, text, kind }, i) => {
    if (labels[i] || text === '') return [];
    const below = kind === 'range-below' || kind === 'half-wave';
    const where = kind === 'range-above' ? 'above' : below ? 'below' : 'line at';
    return [`${where} ${frequencyText(frequency)}: ${text.replace(/^← | →$/g, '')}`];
  });
}
