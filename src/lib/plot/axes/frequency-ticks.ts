import type { Hertz } from '../../units.js';

export interface FrequencyTick {
  frequency: Hertz;
  /** Short text below the axis; empty for a line without a figure. */
  label: string;
}

/** Least distance in text heights between the middles of two figures. */
const figureRoom = 2.6;

/**
 * The lines of a logarithmic frequency axis in the 1–2–5 steps customary for audio charts (50, 100, 200, 500, 1k …).
 * Where they would stand closer than `room` allows, only the decades keep their figures.
 *
 * @param pixelsPerDecade how wide ten to one is drawn
 * @param textSize height of the figures in pixels
 */
export function frequencyTicks(
  from: Hertz,
  to: Hertz,
  pixelsPerDecade: number,
  textSize: number
): FrequencyTick[] {
  const all = pixelsPerDecade * Math.log10(2) >= figureRoom * textSize;
  const ticks: FrequencyTick[] = [];
  for (let power = Math.floor(Math.log10(from)); 10 ** power <= to; power++)
    for (const step of [1, 2, 5]) {
      const frequency = Number((step * 10 ** power).toPrecision(1));
      if (frequency < from || frequency > to) continue;
      ticks.push({ frequency, label: all || step === 1 ? short(frequency) : '' });
    }
  const first = ticks.find((tick) => tick.label !== '');
  if (first) first.label += ' Hz';
  return ticks;
}

function short(frequency: Hertz): string {
  return frequency >= 1000 ? `${frequency / 1000}k` : `${frequency}`;
}
