import { filter, section } from '../blocks/filter.js';
import type { Span } from '../blocks/span.js';
import { along, type Course } from '../motion/course.js';
import { blast } from './blast.js';
import { withEchoes } from './with-echoes.js';
import { hiss } from './hiss.js';
import { rods } from './rods.js';
import { slowCurve } from '../blocks/slow-curve.js';
import { beatRate, driverRate, type Steam } from './steam.js';

/**
 * A steam locomotive along a course: blast, hissing steam, rods and rolling wheels, with a few early reflections. The
 * parts, their proportions and the levels at the notches are described in docs/models/steam-sound.md.
 */
export function renderSteam(sound: Steam, course: Course, span: Span): Float32Array {
  const { length, sampleRate } = span;
  const top = driverRate(sound, sound.topSpeed);
  const fewBeats = beatsTrim(sound);
  const sum = blast(sound, course, span);
  const trim = slowCurve(span, (i) => fewBeats * levelTrim(along(course, course.speed, i) / top));
  const clank = rods(sound, course, span);
  const steam = hiss(sound, course, span);

  const rumble = filter(span.noise(2), section('bandPass', 190, 0.6, sampleRate), span, 0.5);
  filter(span.noise(2), section('lowPass', 520, 0.6, sampleRate), span, 0.3, rumble);
  const rolling = slowCurve(span, (i) => 0.9 * (along(course, course.speed, i) / top) ** 1.5);

  for (let i = 0; i < length; i++)
    sum[i] = trim[i] * (sum[i] + 2.4 * clank[i] + rolling[i] * rumble[i]) + 0.31 * steam[i];
  return filter(withEchoes(sum, span), section('highPass', 32, 0.7, sampleRate), span, 0.25);
}

/** A gain by the share of the top speed: slow, single beats are as loud as many; found by measurement. */
function levelTrim(share: number): number {
  return 10 ** ((-3.5 * share) / 20);
}

/** Beats a second at top speed of an engine that needs no trim. */
const USUAL_BEATS = 19.5;

/** A gain by how many beats there can be in a second: an engine of few beats is as loud as one of many. */
function beatsTrim(sound: Steam): number {
  return Math.min(2, Math.max(0.6, (USUAL_BEATS / beatRate(sound, sound.topSpeed)) ** 0.4));
}
