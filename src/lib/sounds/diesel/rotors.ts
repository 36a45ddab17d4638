import type { Hertz } from '../../units.js';
import { addScaled } from '../blocks/add-scaled.js';
import type { Span } from '../blocks/span.js';
import { along, type Course } from '../motion/course.js';
import { addWave } from './add-wave.js';
import { curveAlong, highestOf } from './curve-along.js';
import { type Diesel, patternTurns } from './diesel.js';
import { lateNoise } from './late-noise.js';
import { addResonances } from './resonances.js';
import { shaken } from './shaken.js';
import type { SlowNoise } from './slow-noise.js';

/** How loud the two cooling fans are beside each other. */
const FAN_GAINS = [1, 0.55];
/** Their blades pass about so often in a second at full speed: 240 to 270 Hz (from memory), set by the speed of their tips. */
const BLADES: Hertz = 255;
/** Pairs of poles of the alternator. */
const POLE_PAIRS = 5;
/** Full speed of a medium-speed engine, in turns a second. */
const FULL = 1000 / 60;

/**
 * Blade passages of a fan for each turn of the crank. They are whole over a pattern, so that a loop comes round: the two
 * numbers on either side of 255 Hz at full speed, the louder fan being the faster one. At 980 rpm those are 16 and 15.5,
 * eight blades at about twice engine speed.
 */
export function bladeOrder(sound: Diesel, fan: 0 | 1): number {
  const patterns = sound.fullRpm / 60 / patternTurns(sound);
  return (Math.floor(BLADES / patterns) + 1 - fan) / patternTurns(sound);
}

/** Adds the cooling fans: the beat of their blades and a rush of air that swells with every blade. */
export function addFans(
  signal: Float32Array,
  sound: Diesel,
  course: Course,
  span: Span,
  slow: SlowNoise
): void {
  if (sound.fans === 0) return;
  const { sampleRate, spare } = span;
  const fastest = highestOf(course.speed);
  const speed = (sample: number) => along(course, course.speed, sample) / FULL;
  const blades = spare.take();
  FAN_GAINS.forEach((gain, n) => {
    const order = bladeOrder(sound, n as 0 | 1);
    addWave(
      blades,
      {
        partials: [1, 0.45, 0.25, 0.12],
        phase: (sample) => order * along(course, course.turns, sample) + 0.35 * slow(3 + n, sample),
        level: (sample) => gain * speed(sample) ** 1.8 * (1 + 0.2 * slow(5, sample)),
        highest: order * fastest
      },
      sampleRate
    );
  });
  const white = lateNoise(span, 0.77);
  const air = curveAlong(course, span, (motion) => (motion.speed / FULL) ** 1.8);
  const rush = shaken(air, blades, 0.35, white);
  addScaled(signal, blades, 0.16 * sound.fans);
  addResonances(
    rush,
    [
      { frequency: 420, q: 0.5, gain: 0.55 * sound.fans },
      { frequency: 1700, q: 0.5, gain: 0.16 * sound.fans }
    ],
    span,
    signal
  );
  spare.giveBack(blades, white, rush);
}

/**
 * Adds the hum of the alternator: twice the rate of its pole pairs (the iron is pulled in every half period) and six
 * and twelve times (the ripple of its rectifier), as strong as it is loaded.
 */
export function addHum(signal: Float32Array, sound: Diesel, course: Course, span: Span): void {
  if (sound.hum === 0) return;
  const fastest = highestOf(course.speed);
  const partials = Array.from({ length: 12 }, (_, n) => ({ 1: 1, 2: 0.4, 5: 0.5, 11: 0.3 })[n] ?? 0);
  addWave(
    signal,
    {
      partials,
      phase: (sample) => POLE_PAIRS * along(course, course.turns, sample),
      level: (sample) => 0.16 * sound.hum * (0.12 + along(course, course.effort, sample)),
      highest: POLE_PAIRS * fastest
    },
    span.sampleRate
  );
}
