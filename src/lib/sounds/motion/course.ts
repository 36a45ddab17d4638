import type { Hertz, Seconds } from '../../units.js';
import { type Motion, TICK } from './motion.js';

/**
 * How a machine runs along a span of sound: its motion at every tick (1 ms), between which everything is linear.
 * Sample i of the span is at tick i / samplesPerTick.
 */
export interface Course {
  samplesPerTick: number;
  turns: Float64Array;
  speed: Float32Array;
  effort: Float32Array;
  spool: Float32Array;
  seconds: Float64Array;
  /** Whether speed, effort and spool are the same throughout, as in a loop. */
  steady: boolean;
}

/** A pulse of a course: the whole part of its number counts from turns = 0. */
export interface Pulse {
  /** Where in the span, in samples, a real number. */
  at: number;
  /** Its number since turns = 0; it tells the cylinder, by its remainder. */
  number: number;
}

/** The course through these motions, a tick apart. */
export function courseThrough(motions: Omit<Motion, 'load'>[], sampleRate: Hertz): Course {
  return {
    samplesPerTick: sampleRate * TICK,
    turns: Float64Array.from(motions, ({ turns }) => turns),
    speed: Float32Array.from(motions, ({ speed }) => speed),
    effort: Float32Array.from(motions, ({ effort }) => effort),
    spool: Float32Array.from(motions, ({ spool }) => spool),
    seconds: Float64Array.from(motions, ({ seconds }) => seconds),
    steady: motions.every(
      ({ speed, effort, spool }) =>
        speed === motions[0].speed && effort === motions[0].effort && spool === motions[0].spool
    )
  };
}

/** The course of a machine that runs steadily for so many ticks: `turns` in all, and `seconds`. */
export function steadyCourse(
  { speed, effort, spool }: Pick<Motion, 'speed' | 'effort' | 'spool'>,
  ticks: number,
  { turns, seconds, samples }: { turns: number; seconds: Seconds; samples: number }
): Course {
  const course: Course = {
    samplesPerTick: samples / ticks,
    turns: new Float64Array(ticks + 1),
    speed: new Float32Array(ticks + 1).fill(speed),
    effort: new Float32Array(ticks + 1).fill(effort),
    spool: new Float32Array(ticks + 1).fill(spool),
    seconds: new Float64Array(ticks + 1),
    steady: true
  };
  for (let i = 0; i <= ticks; i++) {
    course.turns[i] = (turns * i) / ticks;
    course.seconds[i] = seconds * (i / ticks);
  }
  return course;
}

/** A curve of the course at a sample; before and behind its ends it stays as it is there. */
export function along(course: Course, curve: Float32Array | Float64Array, sample: number): number {
  const x = sample / course.samplesPerTick;
  const last = curve.length - 1;
  if (x <= 0) return curve[0];
  if (x >= last) return curve[last];
  const i = Math.floor(x);
  return curve[i] + (x - i) * (curve[i + 1] - curve[i]);
}

/**
 * Every place of the course where `turns·perTurn` is a whole number, from its beginning up to, but not including, its
 * end: the pulses of an engine of `perTurn` firings a turn. A machine that stands has none.
 */
export function pulsesOf({ turns, samplesPerTick }: Course, perTurn: number): Pulse[] {
  const pulses: Pulse[] = [];
  // Rounding must neither lose nor double the pulse at either end.
  const hair = 1e-9;
  let next = Math.ceil(turns[0] * perTurn - hair) + 0;
  const end = turns[turns.length - 1] * perTurn - hair;
  for (let tick = 0; tick < turns.length - 1; tick++) {
    const [from, to] = [turns[tick] * perTurn, turns[tick + 1] * perTurn];
    while (next < end && next <= to && to > from) {
      pulses.push({ at: Math.max(0, tick + (next - from) / (to - from)) * samplesPerTick, number: next });
      next++;
    }
  }
  return pulses;
}
