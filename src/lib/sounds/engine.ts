import type { Hertz } from '../units.js';

/** A reciprocating engine of a locomotive, as far as its sound needs it. */
export interface Engine {
  name: string;
  cylinders: number;
  cycle: 'four-stroke' | 'two-stroke';
  /** Turns a minute at notch 0. */
  idleRpm: number;
  /** Turns a minute at notch 8. */
  fullRpm: number;
  /** Fixes everything that makes this engine an individual. */
  seed: number;
}

/** An invented medium-speed four-stroke engine; speeds within the usual range of its class (common practice). */
export const PRIME_MOVER: Engine = {
  name: 'Prime mover, twelve cylinders',
  cylinders: 12,
  cycle: 'four-stroke',
  idleRpm: 400,
  fullRpm: 1000,
  seed: 41
};

/** The highest notch of the throttle (common practice). */
export const FULL_NOTCH = 8;

/**
 * Turns a minute at a notch, linear between idle (notch 0) and full speed (notch 8); real notches are meant.
 * @throws RangeError outside 0 … 8.
 */
export function engineRpm(engine: Engine, notch: number): number {
  if (!(notch >= 0 && notch <= FULL_NOTCH))
    throw new RangeError(`notch must be within 0 … ${FULL_NOTCH}, got ${notch}`);
  return engine.idleRpm + ((engine.fullRpm - engine.idleRpm) * notch) / FULL_NOTCH;
}

/** Rate of firings: rpm/60·cylinders for a two-stroke engine, half of it for a four-stroke one (kinematics). */
export function firingRate(engine: Engine, rpm: number): Hertz {
  return patternRate(engine, rpm) * engine.cylinders;
}

/** Rate at which the pattern of unequal cylinders comes round: every turn (two-stroke), every other (four-stroke). */
export function patternRate(engine: Engine, rpm: number): Hertz {
  return engine.cycle === 'two-stroke' ? rpm / 60 : rpm / 120;
}

/**
 * The engine itself, if it can be rendered.
 * @throws RangeError unless cylinders are a whole number of 1 … 24 and 60 ≤ idle ≤ full ≤ 4000 rpm.
 */
export function validEngine(engine: Engine): Engine {
  const { cylinders, idleRpm, fullRpm } = engine;
  if (!(Number.isInteger(cylinders) && cylinders >= 1 && cylinders <= 24))
    throw new RangeError(`number of cylinders must be a whole number within 1 … 24, got ${cylinders}`);
  if (!(idleRpm >= 60 && idleRpm <= 4000))
    throw new RangeError(`idle speed must be within 60 … 4000 rpm, got ${idleRpm}`);
  if (!(fullRpm >= idleRpm && fullRpm <= 4000))
    throw new RangeError(`full speed must be within ${idleRpm} … 4000 rpm, got ${fullRpm}`);
  return engine;
}
