import type { Seconds } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import type { Span } from '../blocks/span.js';
import { raisedCosine } from '../../numeric/raised-cosine.js';
import type { Horn } from './horn.js';
import { atPhase, type HornBell } from './horn-bells.js';
import { outdoors } from './outdoors.js';
import { slowCurve } from '../blocks/slow-curve.js';

/** The valve is open from `from` until `until`. */
export interface Blow {
  from: Seconds;
  until: Seconds;
}

/** What changes slowly is worked out at this spacing and is straight in between. */
const SPACING: Seconds = 0.0005;
const LEVEL = 0.1;

/**
 * Bells blown at given times, with the noise of the air.
 *
 * @param start the time of the first sample
 * @param cycle time in which the bells' slow unsteadiness comes round
 */
export function hornSound(
  { air }: Pick<Horn, 'air'>,
  bells: HornBell[],
  blows: Blow[],
  span: Span,
  start: Seconds,
  cycle: Seconds
): Float32Array {
  const tone = new Float32Array(span.length);
  const flutter = flutters(bells.length, span);
  bells.forEach((bell, b) => addBell(tone, bell, blows, span, flutter[b], start, cycle));
  const rms = Math.sqrt(bells.reduce((sum, { gain, rms }) => sum + (gain * rms) ** 2, 0));
  addAir(tone, air * rms, blows, span, start);
  const sound = filter(tone, section('highPass', 110, 0.7, span.sampleRate), span, LEVEL / rms);
  return outdoors(sound, span);
}

function addBell(
  tone: Float32Array,
  bell: HornBell,
  blows: Blow[],
  { sampleRate, length }: Span,
  flutter: (i: number) => number,
  start: Seconds,
  cycle: Seconds
): void {
  const stretch = Math.max(1, Math.round(SPACING * sampleRate));
  let scooped = 0;
  let before = stateAt(bell, blows, start, cycle);
  for (let first = 0; first < length; first += stretch) {
    const from = start + first / sampleRate;
    const after = stateAt(bell, blows, from + stretch / sampleRate, cycle);
    const bend = bell.frequency * (2 ** ((before.cents + after.cents) / 2400) - 1);
    if (before.pressure > 0 || after.pressure > 0) {
      const full = before.pressure === 1 && after.pressure === 1;
      const turn = (bell.frequency + bend) / sampleRate + (after.swing - before.swing) / stretch;
      let phase = bell.frequency * from + scooped + before.swing;
      let { pressure, level } = before;
      const end = Math.min(length, first + stretch);
      for (let i = first; i < end; i++) {
        const bright = atPhase(bell.bright, phase);
        const shape = full ? bright : pressure * bright + (1 - pressure) * atPhase(bell.dull, phase);
        tone[i] += level * flutter(i) * shape;
        phase += turn;
        pressure += (after.pressure - before.pressure) / stretch;
        level += (after.level - before.level) / stretch;
      }
    }
    scooped += (bend * stretch) / sampleRate;
    before = after;
  }
}

/**
 * Turbulence: a flutter of 8 % below 30 Hz, each bell's own mixture of three noises. The RMS of unit noise behind the
 * filter is √(1.11·30/24000).
 */
function flutters(bells: number, span: Span): ((i: number) => number)[] {
  const [a, b, c] = [10, 11, 12].map((stream) =>
    filter(span.noise(stream), section('lowPass', 30, 0.7, span.sampleRate), span, 0.08 / 0.0373)
  );
  return Array.from({ length: bells }, (_, bell) => {
    const [x, y] = [(2 * Math.PI * bell) / bells, bell % 2 === 0 ? 0.6 : -0.6];
    const [p, q] = [0.8 * Math.cos(x), 0.8 * Math.sin(x)];
    return (i) => 1 + p * a[i] + q * b[i] + y * c[i];
  });
}

function stateAt(bell: HornBell, blows: Blow[], t: Seconds, cycle: Seconds) {
  const { gain, delay, rise, fall, scoop, sag } = bell;
  let pressure = 0;
  let cents = 0;
  for (const { from, until } of blows) {
    const opening = raisedCosine((t - from - delay) / rise);
    const closing = raisedCosine(1 - (t - until) / fall);
    if (opening * closing <= pressure) continue;
    pressure = opening * closing;
    cents = scoop * (1 - opening) + sag * (1 - closing);
  }
  const swing = bell.tremble.reduce(
    (sum, { turns, phase, depth }) => sum + depth * Math.sin((2 * Math.PI * turns * t) / cycle + phase),
    0
  );
  return { pressure, cents, swing, level: gain * pressure ** 1.3 * (1 + swing) };
}

/** Noise of the air: a rush as the valve opens, before the bells speak; then steady, in the bells' own pulses. */
function addAir(tone: Float32Array, rms: number, blows: Blow[], span: Span, start: Seconds): void {
  const { sampleRate, length } = span;
  const hiss = span.noise(1);
  const mouth = filter(hiss, section('bandPass', 1500, 0.5, sampleRate), span, 1);
  filter(hiss, section('bandPass', 4800, 0.7, sampleRate), span, 0.3, mouth);
  // RMS of both bands together at 48 kHz is 0.5; the bells' pulses raise the noise by their mean size.
  const scale = rms / 0.5;
  const size = tone.reduce((most, x) => Math.max(most, Math.abs(x)), 1e-9);
  const flow = slowCurve(span, (_, t) =>
    blows.reduce((most, { from, until }) => {
      const blown = start + t - from;
      const open = raisedCosine(blown / 0.025) * raisedCosine(1 - (start + t - until) / 0.16);
      return open > 0 ? Math.max(most, open * (1 + 2.2 * Math.exp(-blown / 0.07))) : most;
    }, 0)
  );
  for (let i = 0; i < length; i++)
    tone[i] += scale * flow[i] * (0.7 + 1.3 * (Math.abs(tone[i]) / size)) * mouth[i];
}
