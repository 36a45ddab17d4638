import type { Hertz } from '../units.js';

/** A frequency in words to three figures: "63 Hz", "1.0 kHz", "1.25 kHz", "12.5 kHz". */
export function frequencyText(frequency: Hertz): string {
  if (frequency < 999.5) return `${Math.round(frequency)} Hz`;
  const kilo = (frequency / 1000).toPrecision(3);
  return `${kilo.replace(/^(\d+\.\d)0$/, '$1')} kHz`;
}
