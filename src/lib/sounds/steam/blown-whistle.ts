import type { Hertz, Seconds } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import { notePitch } from '../blocks/note-pitch.js';
import type { Random } from '../blocks/random.js';
import type { Span } from '../blocks/span.js';
import { withEchoes } from './with-echoes.js';
import { eventChance } from '../blocks/event-chance.js';
import { VALVE_TICK } from './valve-curve.js';
import type { Whistle } from './whistle.js';
import { whistleBell } from './whistle-bell.js';

/** How flat a bell is while the pressure rises and falls, in cents for each share that is lacking. */
const FLAT = 130;
/** Unsteadiness of pitch: about so many cents (RMS), in swings of about 1 to 7 a second, the quicker the wider. */
const WANDER = 2.4;
const SWINGS: Hertz[] = [1.2, 2.3, 4.1, 7];
/** Unsteadiness of loudness: so much of it for each of the swings, of each bell and of the steam that all share. */
const FLUTTER = { bell: 0.06, steam: 0.07 };
/** Bands of the escaping steam: frequency, Q, gain. */
const ESCAPE: [Hertz, number, number][] = [
  [1500, 0.5, 0.1],
  [5200, 0.6, 0.09]
];

/** How a bell sounds along a curve of pressure, one value a tick and one more. */
interface Voice {
  /** Phase in periods. */
  phase: Float64Array;
  level: Float32Array;
  /** How much of its beginning is in it, 0 … 1. */
  beginning: Float32Array;
}

/** How a bell is unsteady at a time. */
interface Unsteadiness {
  /** In periods ahead of an even pitch; zero on the average. */
  ahead: number;
  /** Share by which it is louder; zero on the average. */
  louder: number;
}

/** The unsteadiness of a bell over time. In a loop of `round` seconds every swing comes round whole. */
function unsteadiness(
  sound: Whistle,
  note: number,
  pitch: Hertz,
  round: Seconds
): (t: Seconds) => Unsteadiness {
  const chance = eventChance(sound.seed, 6, note);
  const steam = eventChance(sound.seed, 7, 0);
  const width = Math.sqrt(SWINGS.reduce((sum, rate) => sum + rate * rate, 0) / 2);
  const depth = (pitch * (2 ** (WANDER / 1200) - 1)) / width / (2 * Math.PI);
  const rateNear = (usual: Hertz, { uniform }: Random) =>
    (2 * Math.PI * Math.max(1, Math.round(usual * (0.8 + 0.4 * uniform()) * round))) / round;
  const swings = SWINGS.map((usual) => {
    const turn = rateNear(usual, chance);
    return {
      turn,
      start: 2 * Math.PI * chance.uniform(),
      startLouder: 2 * Math.PI * chance.uniform(),
      steamTurn: rateNear(usual, steam),
      startSteam: 2 * Math.PI * steam.uniform()
    };
  });
  return (t) => {
    let ahead = 0;
    let louder = 0;
    for (const { turn, start, startLouder, steamTurn, startSteam } of swings) {
      ahead += depth * Math.sin(turn * t + start);
      louder +=
        FLUTTER.bell * Math.sin(turn * t + startLouder) +
        FLUTTER.steam * Math.sin(steamTurn * t + startSteam);
    }
    return { ahead, louder };
  };
}

/**
 * Blown steam whistle: each bell speaks a little after its steam, chiffs, starts flat and overblown, settles, wanders by
 * a few cents and sinks when the cord is let go; steam hisses in narrow bands around the pitches and in a wide one.
 *
 * @param pressure as of `valveCurve`, along the whole span
 * @param held for a loop that is blown all the time: its length in seconds, in which every bell has a whole number of
 *   periods. Time is counted from `held.from` on.
 */
export function blownWhistle(
  sound: Whistle,
  pressure: Float32Array,
  span: Span,
  held?: { lasts: Seconds; from: Seconds }
): Float32Array {
  const { length, sampleRate } = span;
  const samplesPerTick = length / (pressure.length - 1);
  const out = new Float32Array(length);
  const near = new Float32Array(length);
  const round = held ? held.lasts : length / sampleRate;

  sound.chord.forEach((semitones, note) => {
    const chance = eventChance(sound.seed, 5, note);
    const tempered = notePitch(semitones);
    const pitch = held ? Math.round(tempered * round) / round : tempered;
    const bell = whistleBell(pitch, sampleRate, chance);
    const lag = (0.03 + 0.02 * chance.uniform()) * Math.max(0.6, Math.min(1.6, 440 / pitch));
    const size = (1 + 0.15 * chance.gaussian()) / (1 + (pitch / 1500) ** 2);
    const unsteady = unsteadiness(sound, note, pitch, round);
    const voice = voiceOf(pressure, pitch, lag, unsteady, held?.from ?? 0);
    sing(out, bell.read, voice, samplesPerTick, size);
    const q = 5;
    filter(span.noise(0), section('bandPass', pitch, q, sampleRate), span, 1.3 * size, near);
    if (3 * pitch < 0.4 * sampleRate)
      filter(span.noise(0), section('bandPass', 3 * pitch, q, sampleRate), span, 0.5 * size, near);
  });

  const escape = new Float32Array(length);
  for (const [frequency, q, gain] of ESCAPE)
    if (frequency < 0.4 * sampleRate)
      filter(span.noise(1), section('bandPass', frequency, q, sampleRate), span, gain, escape);
  const breath = 0.12 + 1.4 * sound.breath;
  const chiff = chiffOf(pressure);
  const scale = 0.25 / Math.sqrt(sound.chord.length);
  for (let tick = 0; tick < pressure.length - 1; tick++) {
    const from = Math.round(tick * samplesPerTick);
    const to = Math.round((tick + 1) * samplesPerTick);
    const [p, c] = [pressure[tick], chiff[tick]];
    const rise = (pressure[tick + 1] - p) / (to - from);
    const chiffRise = (chiff[tick + 1] - c) / (to - from);
    for (let i = from; i < to; i++) {
      const now = p + rise * (i - from);
      const burst = c + chiffRise * (i - from);
      out[i] = scale * (out[i] + breath * ((now + 3 * burst) * near[i] + (now + 6 * burst) * escape[i]));
    }
  }
  return withEchoes(out, span);
}

/** The rush before the bells speak: pressure that the slowest of them has not yet answered. */
function chiffOf(pressure: Float32Array): Float32Array {
  const chiff = new Float32Array(pressure.length);
  let spoken = pressure[0];
  for (let tick = 0; tick < pressure.length; tick++) {
    spoken += ((pressure[tick] - spoken) * VALVE_TICK) / 0.05;
    chiff[tick] = Math.max(0, pressure[tick] - spoken);
  }
  return chiff;
}

function voiceOf(
  pressure: Float32Array,
  pitch: Hertz,
  lag: Seconds,
  unsteady: (t: Seconds) => Unsteadiness,
  from: Seconds
): Voice {
  const count = pressure.length;
  const phase = new Float64Array(count);
  const level = new Float32Array(count);
  const beginning = new Float32Array(count);
  let spoken = pressure[0];
  let settled = pressure[0];
  let behind = 0;
  for (let tick = 0; tick < count; tick++) {
    const t = tick * VALVE_TICK + from;
    const p = pressure[tick];
    spoken += ((p - spoken) * VALVE_TICK) / lag;
    settled += ((spoken - settled) * VALVE_TICK) / (1.5 * lag);
    const { ahead, louder } = unsteady(t);
    level[tick] = spoken * (1 + louder);
    beginning[tick] = Math.max(0, spoken - settled) * 1.6;
    phase[tick] = pitch * t + ahead - behind;
    behind += VALVE_TICK * pitch * (1 - 2 ** ((-FLAT * (1 - p)) / 1200));
  }
  // Where the pressure has come up to stay, a bell is where it would be had it never been flat.
  for (let tick = 0; tick < count; tick++) phase[tick] += behind;
  return { phase, level, beginning };
}

function sing(
  out: Float32Array,
  read: (phase: number, beginning: number) => number,
  { phase, level, beginning }: Voice,
  samplesPerTick: number,
  size: number
): void {
  for (let i = 0; i < out.length; i++) {
    const x = i / samplesPerTick;
    const tick = Math.min(phase.length - 2, x | 0);
    const loudness = level[tick] + (x - tick) * (level[tick + 1] - level[tick]);
    if (loudness === 0) continue;
    const at = phase[tick] + (x - tick) * (phase[tick + 1] - phase[tick]);
    out[i] += size * loudness * read(at, beginning[tick]);
  }
}
