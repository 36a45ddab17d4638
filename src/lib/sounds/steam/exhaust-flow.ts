import type { Span } from '../blocks/span.js';
import { along, type Course, pulsesOf } from '../motion/course.js';
import { addPuff } from './add-puff.js';
import { eventChance } from '../blocks/event-chance.js';
import { slowCurve } from '../blocks/slow-curve.js';
import { beatsPerTurn, driverRate, type Steam } from './steam.js';

/** Turns a second below which a beat gets no longer still. */
const SLOWEST = 0.25;

/** How one of the beats of a turn differs from the others: shares of its strength, and of the time between beats. */
export interface BeatOwn {
  strength: number;
  late: number;
}

/**
 * What sets the beats of a turn apart, one for each end of each cylinder: valves that are not quite square. It
 * depends on the seed and the unevenness only, so that it is the same engine at every notch. At full unevenness
 * the strengths spread by a third and the beats by an eighth of their distance (by eye on spectrograms).
 */
export function beatsOwn(sound: Steam): BeatOwn[] {
  const count = beatsPerTurn(sound);
  const own = Array.from({ length: count }, (_, beat) => {
    const chance = eventChance(sound.seed, 0, beat);
    return { strength: chance.gaussian(), late: chance.gaussian() };
  });
  const spread = (values: number[], to: number) => {
    const mean = values.reduce((sum, x) => sum + x, 0) / count;
    const size = Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / count);
    return values.map((x) => (sound.unevenness * to * (x - mean)) / size);
  };
  const strengths = spread(
    own.map(({ strength }) => strength),
    0.34
  );
  const lates = spread(
    own.map(({ late }) => late),
    0.12
  );
  return own.map((_, beat) => ({ strength: 1 + strengths[beat], late: lates[beat] }));
}

/**
 * The flow of steam through the blast pipe, about 1 at the top of a hard beat. At each beat a port opens: what is
 * still in the cylinder blows down, longer after a late cutoff and never longer than the crank leaves it; then the
 * piston pushes out the rest. At speed the beats run into each other over a flow that grows with the speed.
 *
 * @returns one value a sample
 */
export function exhaustFlow(sound: Steam, course: Course, span: Span): Float32Array {
  const { cutoff, load, seed } = sound;
  // A light train is never started hard.
  const most = 0.3 + 0.7 * load;
  const effortAt = (i: number) => Math.min(most, along(course, course.effort, i));
  const { sampleRate } = span;
  const perTurn = beatsPerTurn(sound);
  const top = driverRate(sound, sound.topSpeed);
  const own = beatsOwn(sound);

  const flow = slowCurve(span, (i) => {
    const speed = along(course, course.speed, i);
    const effort = effortAt(i);
    const beat = along(course, course.turns, i) * perTurn;
    const push = 1 - 0.45 * Math.cos(2 * Math.PI * (beat - 0.45));
    return (speed / top) * push * (0.03 + 0.13 * effort);
  });

  for (const { at, number } of pulsesOf(course, perTurn)) {
    const { strength, late } = own[((number % perTurn) + perTurn) % perTurn];
    const chance = eventChance(seed, 1, number);
    const turn = sampleRate / Math.max(SLOWEST, along(course, course.speed, at));
    const effort = effortAt(at);
    const pressure = 0.15 + 0.85 * effort ** 0.7 * (0.7 + 0.5 * cutoff);
    const emptying = (0.05 + 0.12 * cutoff) * sampleRate;
    addPuff(flow, span, {
      at: at + (late + 0.006 * chance.gaussian()) * (turn / perTurn),
      rise: (0.006 - 0.004 * effort) * sampleRate + 0.012 * turn,
      decay: 1 / (1 / emptying + 1 / (0.3 * turn)),
      height: Math.max(0.02, pressure * (strength + 0.05 * chance.gaussian()))
    });
  }
  return flow;
}
