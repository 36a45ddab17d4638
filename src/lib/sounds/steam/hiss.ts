import { filter, section } from '../blocks/filter.js';
import type { Span } from '../blocks/span.js';
import { along, type Course } from '../motion/course.js';
import { slowCurve } from '../blocks/slow-curve.js';
import { beatsPerTurn, driverRate, type Steam } from './steam.js';

/** Strokes of the air pump a second; in a loop as many as fit whole. */
const PUMP_RATE = 1.2;

/**
 * Steam that hisses without a beat: the blower in the smokebox, shut when the exhaust draws the fire itself; a seep
 * from the safety valve, the slow pant of the pump while the engine stands, and the drain cocks, one burst
 * at each end of each cylinder while steam is let in, as long as the engine is slow.
 */
export function hiss(sound: Steam, course: Course, span: Span): Float32Array {
  const { length, sampleRate } = span;
  const perTurn = beatsPerTurn(sound);
  const top = driverRate(sound, sound.topSpeed);
  const speedAt = (i: number) => along(course, course.speed, i);
  const blower = 0.3 + 0.7 * sound.blower;

  // Steam never flows quite evenly: a slow flutter of noise, kept positive.
  const flutter = filter(span.noise(2), section('lowPass', 5, 0.5, sampleRate), span, 9);
  const shares = slowCurve(span, (i) => {
    const moving = speedAt(i) / top;
    return blower * (1 - 0.8 * along(course, course.spool, i)) * (1 - 0.4 * Math.min(1, 2 * moving));
  });
  const out = new Float32Array(length);
  const white = span.noise(1);
  const rush = filter(white, section('bandPass', 620, 0.5, sampleRate), span, 0.28);
  filter(white, section('bandPass', 2300, 0.8, sampleRate), span, 0.16, rush);
  const seep = filter(white, section('highPass', Math.min(4200, 0.3 * sampleRate), 0.7, sampleRate), span, 1);

  const pant = pumpStrokes(course, span, top);
  const cocks = sound.drainCocks ? drainBursts(sound, course, span, perTurn) : null;
  for (let i = 0; i < length; i++) {
    const even = Math.max(0.3, 1 + flutter[i]);
    out[i] = shares[i] * even * (rush[i] + 0.085 * seep[i]) + (0.55 * rush[i] + 0.06 * seep[i]) * pant[i];
    if (cocks) out[i] += cocks[i] * even * (0.22 * seep[i] + 0.5 * rush[i]);
  }
  return out;
}

/** The pump while the engine stands: in pairs, a sharper and a softer stroke of steam. */
function pumpStrokes(course: Course, { length, sampleRate, cyclic }: Span, top: number): Float32Array {
  const { seconds } = course;
  const end = seconds[seconds.length - 1];
  const lasts = length / sampleRate;
  // Strokes are counted from the end of the span, where a loop begins.
  const rate = cyclic ? (2 * Math.max(1, Math.round((PUMP_RATE * lasts) / 2))) / lasts : PUMP_RATE;
  return slowCurve({ length, sampleRate }, (i) => {
    const strokes = (along(course, seconds, i) - end) * rate;
    const count = Math.floor(strokes + 1e-9);
    const t = Math.max(0, strokes - count);
    const size = count % 2 === 0 ? 1 : 0.55;
    const stands = Math.max(0, 1 - (8 * along(course, course.speed, i)) / top);
    return stands * size * (t / 0.07) * Math.exp(1 - t / 0.07);
  });
}

/** How wide the drain cocks hiss, 0 … 1: while steam is let in at a cylinder's end, dying out with its expansion. */
function drainBursts(sound: Steam, course: Course, span: Span, perTurn: number): Float32Array {
  return slowCurve(span, (i) => {
    const speed = along(course, course.speed, i);
    const metres = speed * Math.PI * sound.driverDiameter;
    const beat = along(course, course.turns, i) * perTurn + 0.1;
    const t = beat - Math.floor(beat);
    const admission = Math.min(0.8, 0.15 + 0.8 * sound.cutoff);
    const burst =
      t < 0.1
        ? 0.5 - 0.5 * Math.cos((Math.PI * t) / 0.1)
        : t < admission
          ? 1
          : Math.exp(-(t - admission) / 0.08);
    const ends = t > 0.92 ? (1 - t) / 0.08 : 1;
    return (0.06 + Math.min(1, 6 * speed) * burst * ends) * Math.exp(-((metres / 4) ** 2));
  });
}
