import type { Hertz, Seconds } from '../../units.js';
import { leadingSpan, loopSpan, type Span } from '../blocks/span.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { checkKnobs } from '../knob.js';
import type { MovingKind, MovingSource } from '../sound-kind.js';
import { type Course, courseThrough, steadyCourse } from './course.js';
import { hasSettled, type Motion, settledAt, TICK, ticked } from './motion.js';
import { endingAt, patternBegun } from './whole-patterns.js';

/** About how long a loop lasts. */
const LOOP: Seconds = 5;
/** What sounds before a ride begins, so that filters and echoes are as they would be. */
const RUN_UP: Seconds = 0.4;
/** The end of a ride blends into the loop within this time. */
const BLEND: Seconds = 0.25;
/** A ride ends at the latest by now, however slow its spool is. */
const LONGEST: Seconds = 14;
/** One that takes its load slowly ends after this time once the speed is there: another ride goes on. */
const PIECE: Seconds = 8;

/** A sound that is played once up to `loopFrom` (in samples) and goes round from there to its end. */
export interface Ride {
  samples: Float32Array;
  loopFrom: number;
  /** Of a machine that has not settled by then: another ride goes on from a motion shortly before. */
  goesOn?: boolean;
}

/** What any moving sound has beside its own knobs. */
export interface Moving {
  notch: number;
  seed: number;
}

/**
 * The seamless loop of a machine at its notch: the whole number of patterns that lasts nearest to five seconds,
 * rounded to a sample.
 * @throws RangeError for knobs or a sample rate out of range
 */
export function renderLoop<S extends Moving>(
  kind: MovingSource<S>,
  sound: S,
  sampleRate: Hertz
): Float32Array {
  const { course, span } = loopOf(kind, sound, sampleRate);
  return kind.render(sound, course, span);
}

/**
 * The way of a machine from how it runs now to its notch, and the loop there, in one piece. It begins exactly in the
 * motion `from`, and comes to the loop at the beginning of a pattern.
 *
 * @param loop the loop of `renderLoop`, if it is at hand; it is copied
 * @throws RangeError for knobs or a sample rate out of range
 */
export function renderRide<S extends Moving>(
  kind: MovingSource<S>,
  sound: S,
  from: Motion,
  sampleRate: Hertz,
  loop = renderLoop(kind, sound, sampleRate)
): Ride {
  const { span } = loopOf(kind, sound, sampleRate);
  const motions = wayTo(kind, sound, from);
  const before = Math.round(RUN_UP / TICK);
  const runUp = Array.from({ length: before }, (_, i) => earlier(from, (before - i) * TICK));
  const way = motions.length - 1;
  const ahead = Math.round(RUN_UP * sampleRate);
  const course = courseThrough([...runUp, ...motions], sampleRate);
  const length = Math.round(way * TICK * sampleRate);
  const led = kind.render(sound, course, leadingSpan(ahead + length, span));

  const samples = new Float32Array(length + loop.length);
  samples.set(led.subarray(ahead));
  samples.set(loop, length);
  blend(samples, loop, length, Math.min(length, Math.round(BLEND * sampleRate)));
  return { samples, loopFrom: length, goesOn: !hasSettled(motions[way], kind.target(sound)) };
}

function loopOf<S extends Moving>(
  kind: MovingKind<S>,
  sound: S,
  sampleRate: Hertz
): { course: Course; span: Span } {
  checkKnobs(kind.knobs, sound);
  validSampleRate(sampleRate);
  const rest = settledAt(kind.target(sound));
  const pattern = rest.speed > 0 ? kind.patternTurns(sound) / rest.speed : 1;
  const patterns = Math.max(1, Math.round(LOOP / pattern));
  const length = Math.round(patterns * pattern * sampleRate);
  // A loop of whole samples and whole patterns: its ticks are stretched by less than a sample in all.
  const ticks = Math.max(1, Math.round((patterns * pattern) / TICK));
  const turns = rest.speed > 0 ? patterns * kind.patternTurns(sound) : 0;
  const course = steadyCourse(rest, ticks, { turns, seconds: length / sampleRate, samples: length });
  return { course, span: loopSpan(length, sampleRate, sound.seed) };
}

/**
 * The motions of a ride, a tick apart: from this one on until the machine has settled at its notch, or is on its way for as
 * long as a ride lasts, and a pattern begins; the last one is that beginning.
 */
export function wayTo<S extends Moving>(kind: MovingKind<S>, sound: S, from: Motion): Motion[] {
  const target = kind.target(sound);
  const dynamics = kind.dynamics(sound);
  const slow = dynamics.loading < Infinity;
  const pattern = kind.patternTurns(sound);
  const motions = [from];
  let now = from;
  const isOver = (seconds: Seconds) =>
    hasSettled(now, target) || seconds >= (now.speed === target.speed && slow ? PIECE : LONGEST);
  while (!isOver(motions.length * TICK) || motions.length * TICK < 2 * BLEND) {
    now = ticked(now, target, dynamics);
    motions.push(now);
  }
  if (now.speed === 0) return motions;
  for (;;) {
    const before = now;
    now = ticked(now, target, dynamics);
    motions.push(now);
    const begun = patternBegun(before, now, pattern);
    if (begun !== null) return endingAt(motions, begun * pattern);
  }
}

function earlier(motion: Motion, seconds: Seconds): Motion {
  return { ...motion, turns: motion.turns - motion.speed * seconds, seconds: motion.seconds - seconds };
}

/** Blends what leads up to the loop with the loop's own end: both are the same firings, so with equal gain. */
function blend(samples: Float32Array, loop: Float32Array, end: number, width: number): void {
  for (let i = 0; i < width; i++) {
    const share = 0.5 - 0.5 * Math.cos((Math.PI * (i + 0.5)) / width);
    const at = end - width + i;
    samples[at] +=
      share * (loop[(((loop.length - width + i) % loop.length) + loop.length) % loop.length] - samples[at]);
  }
}
