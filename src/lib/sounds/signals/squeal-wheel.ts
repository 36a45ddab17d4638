import type { Hertz, Seconds } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import { random } from '../blocks/random.js';
import type { Span } from '../blocks/span.js';
import { raisedCosine } from '../../numeric/raised-cosine.js';
import { speedAt, STOP, TOUCH, turnsAt } from './braking.js';
import { partialSum } from './partial-sum.js';
import { slowCurve } from '../blocks/slow-curve.js';
import type { Squeal } from './squeal.js';

/** Modes of a wheel, as shares of the one it squeals in most. */
const MODES = [0.41, 0.68, 1, 1.36, 1.76, 2.2];
/** How likely a squeal is to be in each of them. */
const LIKELY = [0.08, 0.2, 0.4, 0.18, 0.1, 0.04];
const CEILING = 0.45;

/** A squeal of one wheel in one of its modes. */
interface Tone {
  from: Seconds;
  until: Seconds;
  frequency: Hertz;
  level: number;
}

/** The tones of one wheel, one after another, now and then with silence between. */
function tonesOf({ pitch, seed }: Squeal, wheel: number): Tone[] {
  const chance = random(seed ^ (0x5c1 + 131 * wheel));
  const own = 1 + 0.025 * (wheel === 0 ? 0 : chance.gaussian());
  const tones: Tone[] = [];
  let t = TOUCH + 0.25 + 0.6 * wheel * chance.uniform();
  while (t < STOP - 0.35) {
    const lasts = 0.18 + 1.3 * chance.uniform() ** 2;
    let pick = chance.uniform();
    const mode = Math.max(
      0,
      LIKELY.findIndex((share) => (pick -= share) < 0)
    );
    const until = Math.min(t + lasts, STOP - 0.12);
    const level = (0.35 + 0.65 * chance.uniform()) / (1 + 0.6 * wheel) / Math.sqrt(MODES[mode] + 0.3);
    if (chance.uniform() > 0.12 + 0.22 * wheel)
      tones.push({ from: t, until, frequency: own * pitch * MODES[mode], level });
    t = until - 0.04 + (chance.uniform() < 0.25 ? 0.4 * chance.uniform() : 0);
  }
  return tones;
}

/**
 * Adds the squeals of one wheel to a sound: each builds up from nothing in a twelfth of a second, a little flat, wanders, flickers
 * with the roughness, swings with the turning wheel, and breaks off faster than it came.
 */
export function addWheel(sound: Float32Array, squeal: Squeal, wheel: number, span: Span): void {
  const { sampleRate } = span;
  const { roughness } = squeal;
  // Noise behind a low-pass at f has RMS √(1.11·f/24000): wander of 0.7 % below 1.5 Hz, jitter, flicker below 90 Hz.
  const wander = filter(
    span.noise(10 + wheel),
    section('lowPass', 1.5, 0.7, sampleRate),
    span,
    0.007 / 0.0083
  );
  filter(
    span.noise(10 + wheel),
    section('lowPass', 40, 0.7, sampleRate),
    span,
    (0.013 * roughness) / 0.043,
    wander
  );
  const flicker = filter(span.noise(10 + wheel), section('lowPass', 90, 0.7, sampleRate), span, 1 / 0.0645);
  const swing = slowCurve(span, (_, t) => 1 + 0.25 * Math.sin(2 * Math.PI * turnsAt(t) + wheel));
  const slowing = slowCurve(span, (_, t) => 0.012 * (1 - speedAt(t)));
  for (const { from, until, frequency, level } of tonesOf(squeal, wheel)) {
    const [first, last] = [Math.ceil(from * sampleRate), Math.floor(until * sampleRate)];
    const sizes = [1, 0.22, 0.14, 0.06].filter((_, n) => (n + 1) * frequency * 1.03 < CEILING * sampleRate);
    let phase = 0;
    for (let i = first; i <= last; i++) {
      const t = i / sampleRate;
      const rise = raisedCosine((t - from) / 0.09);
      const size = level * rise * raisedCosine((until - t) / 0.05);
      const bend = 1 + wander[i] - 0.006 * (1 - rise) + slowing[i];
      phase += (2 * Math.PI * frequency * bend) / sampleRate;
      const gain = swing[i] * size * Math.max(0, 1 - roughness + roughness * (0.6 + 0.6 * flicker[i]));
      sound[i] += gain * partialSum(phase, sizes);
    }
  }
}
