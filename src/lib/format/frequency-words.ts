import type { Hertz } from '../units.js';

/** A frequency to three figures at most, as one would say it: 640 Hz, 1.26 kHz. */
export function frequencyWords(frequency: Hertz): string {
  if (frequency < 995) return `${Number(frequency.toPrecision(2))} Hz`;
  return `${Number(Math.max(1, frequency / 1000).toPrecision(3))} kHz`;
}
