import type { Hertz } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import type { Span } from '../blocks/span.js';
import { along, type Course, pulsesOf } from '../motion/course.js';
import { eventChance } from '../blocks/event-chance.js';
import { driverRate, type Steam } from './steam.js';

/** What rings when a rod knocks in its bearings: frequency, Q, gain. */
const PARTS: [Hertz, number, number][] = [
  [210, 4, 1.8],
  [730, 9, 1.5],
  [1680, 13, 1.2],
  [2950, 14, 0.7]
];

/**
 * Rods, crossheads and axleboxes: a clank twice a turn, never twice alike, louder with the speed and louder still when
 * the engine drifts and no steam takes up the slack.
 */
export function rods(sound: Steam, course: Course, span: Span): Float32Array {
  const { length, sampleRate } = span;
  const out = new Float32Array(length);
  if (sound.rods === 0) return out;
  const top = driverRate(sound, sound.topSpeed);
  const noise = span.noise(2);
  const blows = PARTS.map(() => new Float32Array(length));

  for (const { at, number } of pulsesOf(course, 2)) {
    const chance = eventChance(sound.seed, 3, number);
    const speed = along(course, course.speed, at);
    const effort = along(course, course.effort, at);
    const turn = sampleRate / Math.max(0.25, speed);
    const hard =
      (0.45 + 0.3 * Math.min(1, speed / top)) *
      (1.3 - 0.9 * effort) *
      (number % 2 === 0 ? 1 : 0.7) *
      Math.exp(0.3 * chance.gaussian());
    const start = at + (0.11 + 0.012 * chance.gaussian()) * turn;
    blows.forEach((blow) => {
      const size = hard * Math.exp(0.25 * chance.gaussian());
      strike(blow, span, noise, start, size, (0.0012 + 0.001 * chance.uniform()) * sampleRate);
    });
  }
  PARTS.forEach(([usual, q, gain], k) => {
    const frequency = usual * (1 + 0.05 * eventChance(sound.seed, 4, k).gaussian());
    if (frequency < 0.45 * sampleRate)
      filter(blows[k], section('bandPass', frequency, q, sampleRate), span, sound.rods * gain, out);
  });
  return out;
}

/** A short burst of noise that starts at once and dies away. */
function strike(
  blow: Float32Array,
  { cyclic }: Span,
  noise: Float32Array,
  at: number,
  height: number,
  decay: number
): void {
  const length = blow.length;
  const fall = Math.exp(-1 / decay);
  const last = Math.ceil(7 * decay);
  let i = Math.round(at);
  if (cyclic) i = ((i % length) + length) % length;
  for (let n = 0, size = height; n < last; n++, size *= fall) {
    if (i >= 0) blow[i] += size * noise[i];
    if (++i >= length) {
      if (!cyclic) return;
      i = 0;
    }
  }
}
