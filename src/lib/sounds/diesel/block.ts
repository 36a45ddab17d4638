import type { Hertz, Seconds } from '../../units.js';
import { addScaled } from '../blocks/add-scaled.js';
import { filter, section } from '../blocks/filter.js';
import { addPulse } from '../blocks/pulse.js';
import { random } from '../blocks/random.js';
import type { Span } from '../blocks/span.js';
import type { Course } from '../motion/course.js';
import { curveAlong } from './curve-along.js';
import { type Diesel, dieselSize } from './diesel.js';
import type { Firing } from './firings.js';
import { shaken } from './shaken.js';

/** What rings when it is struck: so many natural frequencies from the lowest to the highest, and their Q. */
interface Casting {
  modes: number;
  lowest: Hertz;
  highest: Hertz;
  q: number;
  /** Within this time all of it rings. */
  spread: Seconds;
  /** And this long it can be heard. */
  rings: Seconds;
}

/** Block and crankcase; valve gear; injectors and their pipes. */
const BLOCK: Casting = { modes: 18, lowest: 300, highest: 4200, q: 6, spread: 0.006, rings: 0.018 };
const VALVES: Casting = { modes: 12, lowest: 900, highest: 6500, q: 7, spread: 0.003, rings: 0.009 };
const INJECTORS: Casting = { modes: 12, lowest: 2200, highest: 10500, q: 8, spread: 0.0015, rings: 0.0045 };

/** No blow is harder than the metal gives way: rings begin within this time. */
const ATTACK = 0.00025;
/** Gears, pumps and bearings, beside a knock at full effort, at 1000 rpm. */
const GEARS = 0.08;
/** That speed in turns a second. */
const FULL = 1000 / 60;

/** Crank angles of the blows, from top dead centre. */
const ANGLES = { injection: -9, knock: 3 };
/** Of the seating of valves: exhaust and intake; a two-stroke engine has ports for its intake. */
const SEATS = { 'four-stroke': [388, 590], 'two-stroke': [242] };

/**
 * Combustion, valves and injectors as heard through the metal: at every firing a few blows at their own crank angles.
 * A blow rings in many natural frequencies of its casting, which every cylinder strikes in its own proportion by where
 * it stands; with it goes a short burst of noise, since no two blows are the same.
 */
export function block(sound: Diesel, firings: Firing[], course: Course, span: Span): Float32Array {
  const { sampleRate, spare } = span;
  const out = spare.take();
  const rings = (casting: Casting, salt: number) => ringsOf(sound, casting, salt, firings, sampleRate);
  const knocks = rings(BLOCK, 1);
  const valves = rings(VALVES, 2);
  const ticks = rings(INJECTORS, 3);
  const low = spare.take();
  const high = spare.take();

  for (const { at, number, cylinder, strength, effort, degree, chance } of firings) {
    const when = (angle: number) => at + angle * degree * sampleRate;
    const loudness = (spread: number) => Math.exp(spread * chance.gaussian());
    const knock = (0.42 + 0.68 * effort) * strength * cylinder.knock ** (1.3 - effort) * loudness(0.2);
    add(out, span, when(ANGLES.knock), knocks[number], 0.24 * knock);
    addPulse(low, span, when(ANGLES.knock), 0.0022 * sampleRate, 0.45 * knock);
    const tick = 0.5 * loudness(0.2);
    add(out, span, when(ANGLES.injection), ticks[number], 0.3 * tick);
    addPulse(high, span, when(ANGLES.injection), 0.0004 * sampleRate, tick);
    for (const angle of SEATS[sound.cycle]) {
      const seat = 0.5 * loudness(0.25);
      add(out, span, when(angle + 8 * cylinder.place), valves[number], 0.3 * seat);
      addPulse(high, span, when(angle + 8 * cylinder.place), 0.0005 * sampleRate, 0.6 * seat);
    }
  }
  const white = span.noise(0);
  const gears = curveAlong(course, span, ({ speed }) => GEARS * (speed / FULL) ** 1.5);
  shaken(low, gears, 1, white);
  shaken(high, gears, 0.4, white);
  const size = dieselSize(sound);
  filter(low, section('bandPass', 1000 / size, 0.6, sampleRate), span, 0.9, out);
  if (sampleRate > 12000) filter(high, section('bandPass', 4000 / size, 0.6, sampleRate), span, 0.35, out);
  spare.giveBack(low, high, gears);
  return out;
}

/** How a casting rings when a cylinder strikes it, for every cylinder by its number. */
function ringsOf(
  sound: Diesel,
  { modes, lowest, highest, q, spread, rings: seconds }: Casting,
  salt: number,
  firings: Firing[],
  sampleRate: Hertz
): Float32Array[] {
  const size = dieselSize(sound);
  const chance = random(sound.seed ^ (0xb10c * salt));
  const all = Array.from({ length: modes }, (_, m) => {
    const place = (m + 0.5 + 0.35 * chance.gaussian()) / modes;
    const frequency = (lowest * (highest / lowest) ** place) / size;
    return {
      frequency,
      swings: 1 + m / 2,
      phase: 2 * Math.PI * chance.uniform(),
      gain: (lowest / frequency) ** 0.4,
      late: spread * chance.uniform()
    };
  }).filter(({ frequency }) => frequency < 0.45 * sampleRate);
  const length = Math.ceil(seconds * size * sampleRate);
  const places = new Map(firings.map(({ number, cylinder }) => [number, cylinder.place]));
  const rings: Float32Array[] = [];
  for (const number of places.keys()) rings[number] = new Float32Array(length);
  const mode = new Float32Array(length);
  const soft = Float64Array.from({ length }, (_, i) => 1 - Math.exp(-((i / (ATTACK * sampleRate)) ** 2)));
  for (const { frequency, swings, phase, gain, late } of all) {
    const w = (2 * Math.PI * frequency) / sampleRate;
    const first = Math.round(late * sampleRate);
    // It dies away by its Q, and what would still ring at the end a little sooner.
    const fall = Math.max(w / (2 * q), 5 / (length - first));
    const last = Math.min(length, first + Math.ceil(7 / fall));
    const rung = mode.subarray(first, last);
    strike(rung, soft, gain, fall, w);
    for (const [number, place] of places)
      addScaled(rings[number].subarray(first), rung, Math.cos(Math.PI * swings * place + phase));
  }
  return rings;
}

/** One mode from its beginning on. */
function strike(mode: Float32Array, soft: Float64Array, gain: number, fall: number, w: number): void {
  for (let i = 0; i < mode.length; i++) mode[i] = gain * Math.exp(-fall * i) * soft[i] * Math.sin(w * i);
}

/** Adds a short sound at the sample nearest to a place; in a loop it goes round. */
function add(signal: Float32Array, { cyclic }: Span, at: number, ring: Float32Array, gain: number): void {
  const length = signal.length;
  const nearest = Math.round(at);
  const start = cyclic ? ((nearest % length) + length) % length : nearest;
  const last = Math.min(ring.length, length);
  const end = Math.min(last, length - start);
  const first = Math.max(0, -start);
  if (first < end) addScaled(signal.subarray(start + first), ring.subarray(first, end), gain);
  const round = Math.max(0, end);
  if (cyclic && round < last)
    addScaled(signal.subarray(start + round - length), ring.subarray(round, last), gain);
}
