import type { Hertz } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import type { Span } from '../blocks/span.js';
import { along, type Course } from '../motion/course.js';
import { addWave } from './add-wave.js';
import { curveAlong, highestOf } from './curve-along.js';
import { type Diesel, dieselSize } from './diesel.js';
import { lateNoise } from './late-noise.js';
import type { SlowNoise } from './slow-noise.js';

/** Blades of the compressor (half of them splitters), and turns a second at full load: 18 000 rpm (from memory). */
const TURBO = { blades: 14, full: 300, still: 0.3 };
/** Pulses of the two three-lobed rotors, and teeth of their gear, for each turn of the crank. */
const BLOWER = { pulses: 12, teeth: 53 };

/**
 * Turns a second of the turbocharger when its spool stands so, 0 … 1: 300·(0.3 + 0.7·spool^0.75) for a medium-speed
 * engine, faster for a smaller one.
 */
export function turboSpeed(sound: Diesel, spool: number): Hertz {
  const { full, still } = TURBO;
  return (full / dieselSize(sound)) * (still + (1 - still) * Math.max(0, spool) ** 0.75);
}

/** Adds what the charger is heard by. */
export function addCharger(
  signal: Float32Array,
  sound: Diesel,
  course: Course,
  span: Span,
  slow: SlowNoise
): void {
  if (sound.charging === 'turbocharger') addTurbocharger(signal, sound, course, span, slow);
  if (sound.charging === 'blower') addBlower(signal, course, span, slow);
}

/** The whine of its blades, of the half of them that are no splitters, the unbalance of its shaft, and its hiss. */
function addTurbocharger(
  signal: Float32Array,
  sound: Diesel,
  course: Course,
  span: Span,
  slow: SlowNoise
): void {
  const { sampleRate } = span;
  const turns = turnsOfTurbo(sound, course, span);
  const spool = (sample: number) => along(course, course.spool, sample);
  const highest = turboSpeed(sound, highestOf(course.spool));
  const wander = (sample: number) => along(course, turns, sample) + 0.05 * slow(1, sample);
  const flutter = (sample: number) => 1 + 0.22 * slow(2, sample);
  const { blades } = TURBO;
  const tone = (order: number, partials: number[], size: (spool: number) => number) => {
    addWave(
      signal,
      {
        partials,
        phase: (sample) => order * wander(sample),
        level: (sample) => size(spool(sample)) * flutter(sample),
        highest: order * highest
      },
      sampleRate
    );
  };
  tone(blades / 2, [0.5, 1], (share) => 0.006 + 0.06 * share ** 1.4);
  tone(1, [0.6, 0.3, 0.4, 0.15], (share) => 0.01 + 0.035 * share);
  const air = curveAlong(course, span, (motion) => 0.02 + motion.spool ** 1.3);
  const white = lateNoise(span, 0.91);
  const hiss = filter(white, section('bandPass', 4800, 0.5, sampleRate), span, 1, span.spare.take());
  addRush(signal, 0.11, air, hiss);
  span.spare.giveBack(air, white, hiss);
}

/** Its turns along the course: whole in a loop, and otherwise 0 at the end, where the loop begins. */
export function turnsOfTurbo(sound: Diesel, course: Course, { cyclic, sampleRate }: Span): Float64Array {
  const { spool, samplesPerTick } = course;
  const tick = samplesPerTick / sampleRate;
  const turns = new Float64Array(spool.length);
  let before = turboSpeed(sound, spool[0]);
  for (let i = 1; i < turns.length; i++) {
    const now = spool[i] === spool[i - 1] ? before : turboSpeed(sound, spool[i]);
    turns[i] = turns[i - 1] + (tick * (before + now)) / 2;
    before = now;
  }
  const all = turns[turns.length - 1];
  return cyclic ? turns.map((x) => (x * Math.max(1, Math.round(all))) / all) : turns.map((x) => x - all);
}

/** Air that two rotors push through in gulps, at a rate that the crank sets, and the gear between them. */
function addBlower(signal: Float32Array, course: Course, span: Span, slow: SlowNoise): void {
  const { sampleRate } = span;
  const turns = (sample: number) => along(course, course.turns, sample);
  const speed = (sample: number) => along(course, course.speed, sample) / 16;
  const fastest = highestOf(course.speed);
  const tone = (order: number, partials: number[], size: number, voice: number) => {
    addWave(
      signal,
      {
        partials,
        phase: (sample) => order * turns(sample) + 0.12 * slow(voice, sample),
        level: (sample) => size * speed(sample) ** 1.6 * (1 + 0.2 * slow(voice + 1, sample)),
        highest: order * fastest
      },
      sampleRate
    );
  };
  tone(BLOWER.pulses, [0.5, 1, 0.55, 0.6, 0.4, 0.3, 0.25, 0.2, 0.12, 0.1], 0.065, 1);
  tone(BLOWER.teeth, [1, 0.6, 0.3], 0.035, 2);
  const air = curveAlong(course, span, (motion) => (motion.speed / 16) ** 1.6);
  const white = lateNoise(span, 0.91);
  const gulps = filter(white, section('bandPass', 1500, 0.4, sampleRate), span, 1, span.spare.take());
  addRush(signal, 0.2, air, gulps);
  span.spare.giveBack(air, white, gulps);
}

/** Adds noise that follows a strength. */
function addRush(signal: Float32Array, gain: number, air: Float32Array, noise: Float32Array): void {
  for (let i = 0; i < signal.length; i++) signal[i] += gain * air[i] * noise[i];
}
