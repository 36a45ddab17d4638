import type { Hertz, Seconds } from '../../units.js';
import { loopSpan } from '../blocks/span.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { FULL_NOTCH } from '../driving.js';
import { checkKnobs } from '../knob.js';
import type { MovingKind, MovingSource } from '../sound-kind.js';
import { courseThrough } from './course.js';
import { type Motion, settledAt, TICK, ticked } from './motion.js';
import type { Moving, Ride } from './ride.js';
import { endingAt, patternBegun } from './whole-patterns.js';

/** When the lever goes to which notch. */
const LEVER: readonly { at: Seconds; notch: number }[] = [
  { at: 0, notch: 0 },
  { at: 3, notch: 2 },
  { at: 5, notch: 5 },
  { at: 8, notch: FULL_NOTCH },
  { at: 19, notch: 0 }
];
const END: Seconds = 30;
/** When the horn is blown. */
const BLASTS: readonly { from: Seconds; until: Seconds }[] = [
  { from: 13, until: 14.6 },
  { from: 15.2, until: 16.8 }
];
/** A blast dies away with this time constant. */
const RELEASE: Seconds = 0.05;

/**
 * A run past of about 30 seconds, as one loop: idle, notch up, run, two blasts of the horn, shut off, idle again. It
 * comes round at the beginning of a pattern.
 *
 * @param gain of the machine
 * @param blast what the horn gives, as loud as it is to be
 * @throws RangeError for knobs or a sample rate out of range
 */
export function renderRunPast<S extends Moving>(
  kind: MovingSource<S>,
  sound: S,
  sampleRate: Hertz,
  gain: number,
  blast: Ride
): Float32Array {
  checkKnobs(kind.knobs, sound);
  validSampleRate(sampleRate);
  const motions = drive(kind, sound);
  const length = Math.round((motions.length - 1) * TICK * sampleRate);
  const course = courseThrough(motions, sampleRate);
  const span = loopSpan(length, sampleRate, sound.seed);
  const piece = kind.render(sound, course, span).map((x) => gain * x);
  for (const { from, until } of BLASTS) blow(piece, blast, from * sampleRate, until * sampleRate, sampleRate);
  return piece;
}

function drive<S extends Moving>(kind: MovingKind<S>, sound: S): Motion[] {
  // In half a minute nobody waits for a slow load.
  const dynamics = { ...kind.dynamics(sound), loading: Infinity };
  const pattern = kind.patternTurns(sound);
  const targets = LEVER.map(({ at, notch }) => ({ at, target: kind.target({ ...sound, notch }) }));
  let { target } = targets[0];
  let now = settledAt(target);
  const motions = [now];
  for (;;) {
    const seconds = motions.length * TICK;
    target = targets.findLast(({ at }) => at <= seconds)!.target;
    const before = now;
    now = ticked(now, target, dynamics);
    motions.push(now);
    if (seconds < END) continue;
    if (now.speed === 0) return motions;
    const begun = patternBegun(before, now, pattern);
    if (begun !== null) return endingAt(motions, begun * pattern);
  }
}

function blow(
  piece: Float32Array,
  { samples, loopFrom }: Ride,
  from: number,
  until: number,
  sampleRate: Hertz
): void {
  const first = Math.round(from);
  const fall = Math.exp(-1 / (RELEASE * sampleRate));
  const silent = 14 * RELEASE * sampleRate;
  let size = 1;
  for (let i = first, at = 0; i < until + silent && i < piece.length; i++) {
    if (i > until) size *= fall;
    piece[i] += size * samples[at];
    if (++at === samples.length) at = loopFrom;
  }
}
