import type { Seconds } from '../../units.js';
import { random, type Random } from '../blocks/random.js';
import type { Span } from '../blocks/span.js';
import { along, type Course, pulsesOf } from '../motion/course.js';
import { type Cylinder, cylindersOf } from './cylinders.js';
import { type Diesel, patternTurns } from './diesel.js';
import type { SlowNoise } from './slow-noise.js';

/** One cylinder's turn: when it fires and how this firing differs from the others. */
export interface Firing {
  /** Top dead centre, in samples, a real number; it may lie a little outside of the span. */
  at: number;
  /** Its cylinder's number in the order of firing. */
  number: number;
  cylinder: Cylinder;
  /** Strength beside the other firings, 1 on the average. */
  strength: number;
  /** The effort at this moment. */
  effort: number;
  /** A degree of crank angle at this moment. */
  degree: Seconds;
  /** What else is a matter of chance in this firing: the same whenever the same firing is made. */
  chance: Random;
}

/**
 * Crank angle from top dead centre to the opening of the exhaust. Turns are counted so that every pattern begins midway
 * between two openings.
 */
export const EXHAUST_OPENS = 125;
/** The second bank of a vee fires so much later, in shares of the interval: the angle of the vee does not quite fit. */
const ODD = 0.07;

/**
 * All firings along a course. Each cylinder has its own strength and timing that come round with every pattern: that is
 * the lope, largest at idle. On top of it the governor answers to weak cylinders (a swell over the pattern) and hunts
 * slowly, every firing differs a little from the last one of its cylinder, and at idle a few nearly miss. With
 * unevenness 0 only what no two firings ever share is left.
 */
export function firingsAlong(sound: Diesel, course: Course, span: Span, slow: SlowNoise): Firing[] {
  const { seed, unevenness } = sound;
  const cylinders = cylindersOf(sound);
  const count = cylinders.length;
  const perTurn = count / patternTurns(sound);
  // Angles of the crank, in degrees.
  const interval = 360 / perTurn;
  const person = random(seed ^ 0x5e11);
  const swell = [1, 2, 3].map((turns) => ({ turns, phase: 2 * Math.PI * person.uniform() }));
  const lope = cylinders.map((_, i) =>
    swell.reduce(
      (sum, { turns, phase }) => sum + Math.cos((2 * Math.PI * turns * i) / count + phase) / turns,
      0
    )
  );
  const u = 2 * unevenness;

  return pulsesOf(course, perTurn).map(({ at, number }): Firing => {
    const i = ((number % count) + count) % count;
    const cylinder = cylinders[i];
    const effort = along(course, course.effort, at);
    const degree = 1 / (360 * along(course, course.speed, at));
    const chance = random((seed ^ 0x5eed) + Math.imul(number, 0x3c6ef35f));
    const between = (idle: number, full: number) => idle + (full - idle) * effort;
    const late =
      u * between(3, 1.2) * cylinder.timing +
      (0.4 + 0.6 * u) * between(1.5, 0.9) * chance.gaussian() +
      (between(0.05, 0.015) * slow(0, at) + (cylinder.bank ? ODD : 0)) * interval;
    const missed = chance.uniform() < u * between(0.05, -0.02) ? 0.45 : 1;
    const strength =
      1 +
      u * between(0.32, 0.03) * lope[i] +
      u * between(0.22, 0.07) * cylinder.strength +
      (0.4 + 0.6 * u) * between(0.16, 0.13) * chance.gaussian();
    return {
      at: at + (late + interval / 2 - EXHAUST_OPENS) * degree * span.sampleRate,
      number: i,
      cylinder,
      strength: Math.max(0.15, strength * missed),
      effort,
      degree,
      chance
    };
  });
}
