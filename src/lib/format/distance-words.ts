import type { Metres } from '../units.js';
import { FOOT } from './length-units.js';
import { lengthFrom } from './length-words.js';

/** A distance across a room: 0.5 m, or 1.6 ft. */
export function distanceWords(distance: Metres, inches: boolean): string {
  return `${distanceFigure(distance, inches)} ${inches ? 'ft' : 'm'}`;
}

/** The figure alone, to three figures. */
export function distanceFigure(distance: Metres, inches: boolean): string {
  return String(Number((inches ? distance / FOOT : distance).toPrecision(3)));
}

/** A distance as a person types it: as a length, or in feet; without a unit in metres or feet as the screen is. NaN where it is none. */
export function distanceFrom(text: string, inches: boolean): Metres {
  const feet = /^\s*(\d+(?:[.,]\d*)?|[.,]\d+)\s*(ft|')?\s*$/i.exec(text);
  if (feet) return Number(feet[1].replace(',', '.')) * (feet[2] || inches ? FOOT : 1);
  return lengthFrom(text, inches);
}
