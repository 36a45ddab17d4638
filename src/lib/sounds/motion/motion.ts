import type { Seconds } from '../../units.js';

/** How a machine runs at one moment. */
export interface Motion {
  /** Turns of the crank (or of the driving wheels) since the sound began: what is where in its cycle. */
  turns: number;
  /** Turns a second. */
  speed: number;
  /** Share of the full effort, 0 … 1: fuel, steam or current. */
  effort: number;
  /** The effort that what it drives asks for by now, 0 … 1: an electric transmission takes its load slowly. */
  load: number;
  /** What follows the effort slowly, 0 … 1: a turbocharger's speed, say. */
  spool: number;
  /** Time since the sound began: what clocks run by, such as the hum of the line. */
  seconds: Seconds;
}

/** What a machine settles at. */
export interface Target {
  speed: number;
  effort: number;
}

/** How fast a machine gets there. */
export interface Dynamics {
  /** Highest minus lowest speed, in turns a second. */
  range: number;
  /** Time through the whole range, up and down. */
  rise: Seconds;
  fall: Seconds;
  /** Time constant of the effort. */
  answer: Seconds;
  /** How fast it takes its load, in shares of the full effort a second; Infinity: at once. It lets it go at once. */
  loading: number;
  /** Time constants of the spool, up and down. */
  spoolUp: Seconds;
  spoolDown: Seconds;
}

/** The step of time in which a course is worked out. */
export const TICK: Seconds = 0.001;

/** Near its target the speed closes in with this time constant. */
const CLOSING: Seconds = 0.3;
/** So much more effort (of full) for each share of the range that the speed lacks: against its load, and free of it. */
const PUSH = { loaded: 1.6, free: 0.6 };

/** Nearer than this, in shares of the range, a motion has settled. */
const SETTLED = { speed: 2e-4, effort: 0.01, spool: 0.03 };

/** Running steadily at the target, at the start of a pattern. */
export function settledAt({ speed, effort }: Target): Motion {
  return { turns: 0, speed, effort, load: effort, spool: effort, seconds: 0 };
}

/** One tick later: effort first, then speed, last load and spool. */
export function ticked(motion: Motion, target: Target, dynamics: Dynamics): Motion {
  const { range, rise, fall, answer, loading, spoolUp, spoolDown } = dynamics;
  const lacking = target.speed - motion.speed;
  const near = Math.abs(lacking) < SETTLED.speed * range;
  const slope = Math.min(range / rise, Math.max(-range / fall, lacking / CLOSING));
  const speed = near ? target.speed : motion.speed + slope * TICK;
  const load = Math.min(target.effort, motion.load + loading * TICK);
  const push = lacking > 0 && loading < Infinity ? PUSH.free : PUSH.loaded;
  const wanted = near ? load : Math.min(1, Math.max(0, load + (push * lacking) / Math.max(range, 1e-9)));
  const effort = motion.effort + ((wanted - motion.effort) * TICK) / Math.max(answer, TICK);
  const lag = effort > motion.spool ? spoolUp : spoolDown;
  return {
    turns: motion.turns + ((motion.speed + speed) / 2) * TICK,
    speed,
    effort,
    load,
    spool: motion.spool + ((effort - motion.spool) * TICK) / Math.max(lag, TICK),
    seconds: motion.seconds + TICK
  };
}

/** Whether nothing more of a change will be heard. */
export function hasSettled(motion: Motion, target: Target): boolean {
  return (
    motion.speed === target.speed &&
    Math.abs(motion.effort - target.effort) < SETTLED.effort &&
    Math.abs(motion.spool - target.effort) < SETTLED.spool
  );
}
