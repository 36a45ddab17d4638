import type { Hertz, Seconds } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import { addPulse } from '../blocks/pulse.js';
import { random } from '../blocks/random.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { loopSpan, type Span } from '../blocks/span.js';
import { checkKnobs } from '../knob.js';
import type { StillSource } from '../sound-kind.js';
import { raisedCosine } from '../../numeric/raised-cosine.js';
import { addBurst } from './burst.js';
import { COMPRESSOR_KNOBS, type Compressor } from './compressor.js';
import { COMPRESSOR_KIND } from './compressor-kind.js';
import { outdoors } from './outdoors.js';
import { slowCurve } from '../blocks/slow-curve.js';
import { cast, type Partial, type Pattern, strike } from './struck-metal.js';

/** About how long it runs in a loop. */
const RUN: Seconds = 5.5;
const BEFORE: Seconds = 0.1;
/** After it has stopped: the air, then rest. */
const AFTER: Seconds = 2.6;
/** Until it is up to speed in level; its rate is that of the knob from the first stroke on. */
const SPIN_UP: Seconds = 0.6;

/** Cylinder heads, crankcase and receiver, struck by every stroke: Hz and seconds. */
const CASE: readonly Pattern[] = [
  { name: 'receiver', ratio: 96, decay: 0.22, level: 1 },
  { name: 'receiver', ratio: 163, decay: 0.2, level: 0.8 },
  { name: 'crankcase', ratio: 274, decay: 0.12, level: 0.8 },
  { name: 'crankcase', ratio: 418, decay: 0.11, level: 0.9 },
  { name: 'crankcase', ratio: 655, decay: 0.1, level: 0.9 },
  { name: 'head', ratio: 1030, decay: 0.07, level: 0.7 },
  { name: 'head', ratio: 1580, decay: 0.05, level: 0.4 },
  { name: 'fins', ratio: 2380, decay: 0.06, level: 0.3 },
  { name: 'fins', ratio: 3450, decay: 0.05, level: 0.25 }
];
const LEVEL = 0.1;

/**
 * An air compressor: for every stroke of every cylinder a gulp of air at the intake, the thump of compression and the
 * click of two valves; below it the motor. It works harder as the pressure rises. With unloading it runs about five and
 * a half seconds, stops and lets off air, and the loop begins and ends in silence; otherwise the loop is a whole number
 * of turns.
 */
export const COMPRESSOR_SOURCE: StillSource<Compressor> = {
  ...COMPRESSOR_KIND,
  render(compressor: Compressor, sampleRate: Hertz) {
    checkKnobs(COMPRESSOR_KNOBS, compressor);
    validSampleRate(sampleRate);
    const { strokes, cylinders, unloading, seed } = compressor;
    const turns = Math.max(1, Math.round((RUN * strokes) / 60));
    const runs = (turns * 60) / strokes;
    const begin = unloading ? BEFORE : 0;
    const length = Math.round((runs + (unloading ? BEFORE + AFTER : 0)) * sampleRate);
    const span = loopSpan(length, sampleRate, seed);
    const part = partsOf(span);
    const cases = Array.from({ length: cylinders }, (_, n) => cast(CASE, 1, 1, 0.04, (seed ^ 0xc0) + 61 * n));

    for (let n = 0; n < turns * cylinders; n++) {
      const t = (n * 60) / strokes / cylinders;
      const cylinder = n % cylinders;
      const spun = unloading ? 0.4 + 0.6 * Math.min(1, t / SPIN_UP) : 1;
      const pressure = unloading ? 0.55 + (0.45 * t) / runs : 0.85;
      addStroke(
        part,
        span,
        begin + t,
        60 / strokes,
        cases[cylinder],
        spun,
        pressure,
        random(Math.imul(seed + 1, 3253) + n),
        cylinder
      );
    }
    const sound = joined(part, span);
    addMotor(sound, compressor, span, begin, unloading ? runs : Infinity);
    if (unloading) addRelease(sound, span, begin + runs);
    return outdoors(sound, span).map((x) => LEVEL * x);
  }
};

/** What is added up before it is filtered. */
interface Parts {
  noise: Float32Array;
  intake: Float32Array;
  flow: Float32Array;
  valves: Float32Array;
  metal: Float32Array;
}

function partsOf({ length, noise }: Span): Parts {
  const [intake, flow, valves, metal] = Array.from({ length: 4 }, () => new Float32Array(length));
  return { noise: noise(1), intake, flow, valves, metal };
}

function addStroke(
  { noise, intake, flow, valves, metal }: Parts,
  span: Span,
  t: Seconds,
  turn: Seconds,
  body: Partial[],
  spun: number,
  pressure: number,
  chance: ReturnType<typeof random>,
  cylinder: number
): void {
  const { sampleRate } = span;
  const strength = spun * (1 - 0.12 * cylinder) * 10 ** ((0.8 * chance.gaussian()) / 20);
  const at = (share: number) => (t + share * turn + 0.0006 * chance.gaussian()) * sampleRate;
  const suction = at(0.12);
  addBurst(intake, span, noise, suction, 0.1 * turn, 0.14 * turn, 1.6 * strength);
  addPulse(flow, span, suction, 0.05 * turn * sampleRate, strength);
  addBurst(valves, span, noise, suction, 0.0002, 0.002, 1.1 * strength);
  const delivery = at(0.62);
  strike(metal, span, body, delivery, 1.1 * strength * pressure, 900 + 1800 * pressure, chance);
  addBurst(valves, span, noise, delivery, 0.0005, 0.006, 1.7 * strength * pressure);
  addBurst(intake, span, noise, delivery, 0.01 * turn, 0.1 * turn, 0.5 * strength * pressure);
}

function joined({ intake, flow, valves, metal }: Parts, span: Span): Float32Array {
  const { sampleRate } = span;
  const sound = filter(intake, section('bandPass', 520, 0.7, sampleRate), span, 1.4, metal);
  filter(intake, section('bandPass', 1300, 0.7, sampleRate), span, 0.7, sound);
  filter(flow, section('bandPass', 110, 0.7, sampleRate), span, 1.4, sound);
  filter(valves, section('bandPass', 2700, 0.7, sampleRate), span, 1, sound);
  return filter(valves, section('bandPass', 6000, 0.7, sampleRate), span, 0.4, sound);
}

/** Motor and belt: a rough hum that sags with every stroke, and a rush of cooling air. */
function addMotor(
  sound: Float32Array,
  { strokes, cylinders }: Compressor,
  span: Span,
  begin: Seconds,
  runs: Seconds
): void {
  const { sampleRate, length } = span;
  const rush = filter(span.noise(2), section('bandPass', 900, 0.4, sampleRate), span, 0.22);
  const rumble = filter(span.noise(3), section('bandPass', 150, 0.8, sampleRate), span, 0.9);
  const turn = strokes / 60;
  const level = slowCurve(span, (_, t) =>
    runs === Infinity
      ? 1
      : raisedCosine((t - begin) / SPIN_UP) * raisedCosine((begin + runs + 0.35 - t) / 0.5)
  );
  const sag = slowCurve(span, (_, t) => 1 - 0.25 * Math.cos(2 * Math.PI * turn * cylinders * (t - begin)));
  for (let i = 0; i < length; i++) sound[i] += level[i] * (rush[i] + sag[i] * rumble[i]);
}

/** The unloader opens with a click; air rushes out, fast at first. */
function addRelease(sound: Float32Array, span: Span, stopped: Seconds): void {
  const { sampleRate } = span;
  const air = new Float32Array(span.length);
  const noise = span.noise(4);
  const at = (stopped + 0.22) * sampleRate;
  addBurst(air, span, noise, at, 0.012, 0.3, 1.3);
  addBurst(air, span, noise, at, 0.004, 0.05, 0.6);
  addBurst(air, span, noise, at + 0.95 * sampleRate, 0.001, 0.012, 0.3);
  filter(air, section('bandPass', 3200, 0.5, sampleRate), span, 1, sound);
  filter(air, section('bandPass', 7500, 0.6, sampleRate), span, 0.8, sound);
  filter(air, section('bandPass', 900, 0.7, sampleRate), span, 0.5, sound);
}
