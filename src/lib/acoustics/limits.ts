import type { Outline } from './outline.js';
import type { Metres } from '../units.js';

/** Least and greatest value of each thing that can be set, in SI units; both ends are allowed. */
export const LIMITS = {
  /** Sides of plates, shells and boxes. */
  mountLength: [0.001, 3],
  /** Sides of frames and cones. */
  speakerLength: [0.001, 0.5],
  speakerDepth: [0.0002, 0.5],
  bodyVolume: [0, 0.1],
  mms: [1e-7, 1],
  cms: [1e-7, 1],
  bl: [0.001, 100],
  re: [0.1, 10000],
  qms: [0.01, 1000],
  xmax: [1e-6, 0.1],
  ratedPower: [0.001, 1000],
  /** Of a shell. */
  loss: [0, 0.2],
  temperatureC: [-40, 60],
  /** From the middle of the cone to the listener. */
  distance: [0.01, 1000],
  /** From straight in front of the cone, either way round to straight behind. */
  angleDeg: [-180, 180],
  /** Over a board, from straight up. */
  angleOverBoardDeg: [-90, 90],
  /** Thickness of plates and walls. */
  wall: [0.0001, 0.02],
  /** Height over the board. */
  above: [0.001, 1],
  /** Gap and length of a leak, diameter of a hole. */
  leakGap: [1e-6, 0.005],
  leakLength: [0.001, 3],
  hole: [0.0001, 0.1],
  /** Depth of leaks and slits along the flow. */
  openingDepth: [0.0001, 0.05],
  /** Slits along a chassis. */
  slit: [0, 0.05],
  /** Of the space above a chassis. */
  fill: [0, 0.9],
  holes: [1, 10000],
  holeDiameter: [0.0002, 0.05],
  grilleThickness: [0.0001, 0.02],
  cavity: [0.0002, 0.05],
  /** Of a body, m². */
  openings: [1e-6, 1]
} as const satisfies Record<string, readonly [number, number]>;

/**
 * @throws RangeError unless `value` is within `limits`; the message names what it is, the limits and the value
 */
export function checkWithin(
  what: string,
  value: number,
  [least, most]: readonly [number, number],
  unit = ''
): void {
  if (!(value >= least && value <= most))
    throw new RangeError(
      `${what} must be within ${least} … ${most}${unit && ` ${unit}`}, got ${short(value)}`
    );
}

/** @throws RangeError unless a length is within `limits`, both told in millimetres */
export function checkLength(what: string, length: Metres, limits: readonly [number, number]): void {
  // Rounding matters at the ends alone, and is dear where thousands are looked at.
  if (length > limits[0] && length < limits[1]) return;
  checkWithin(what, length * 1000, scaled(limits, 1000), 'mm');
}

/** Limits in another unit. */
export function scaled([least, most]: readonly [number, number], factor: number): [number, number] {
  return [Number((least * factor).toPrecision(9)), Number((most * factor).toPrecision(9))];
}

/** An outline in words. */
export function size(outline: Outline): string {
  if (outline.shape === 'round') return `ø ${mm(outline.diameter)} mm`;
  return `${mm(outline.length)} × ${mm(outline.width)} mm`;
}

/** A length in millimetres, without its unit. */
export function mm(length: Metres): string {
  return short(length * 1000);
}

/** A number in four digits. */
export function short(value: number): string {
  return String(Number(value.toPrecision(4)));
}
