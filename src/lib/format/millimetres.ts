import type { Metres } from '../units.js';

/** A length in millimetres as it is written on a drawing: to a tenth where it is not whole. */
export function millimetres(length: Metres): string {
  const rounded = Math.round(length * 10000) / 10;
  return (rounded < 0 ? '−' : '') + String(Math.abs(rounded));
}
