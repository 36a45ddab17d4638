import type { Hertz } from '../../units.js';
import { addScaled } from '../blocks/add-scaled.js';
import { filter, section } from '../blocks/filter.js';
import { addPulse } from '../blocks/pulse.js';
import { random } from '../blocks/random.js';
import type { Span } from '../blocks/span.js';
import type { Course } from '../motion/course.js';
import { curveAlong } from './curve-along.js';
import { HOT_SOUND } from './cylinders.js';
import { type Diesel, dieselSize } from './diesel.js';
import { EXHAUST_OPENS, type Firing } from './firings.js';
import { pipe } from './pipe.js';
import { addResonances } from './resonances.js';

/** Blowdown of a medium-speed engine at 1000 rpm, in seconds; it goes with the root of the time that a degree takes. */
const BLOWDOWN = 0.001;

/** Rough resonances of silencer, stack and roof of a medium-speed engine: frequency, Q, gain. */
const RESONANCES: [Hertz, number, number][] = [
  [72, 1.4, 0.7],
  [118, 1.6, 0.75],
  [190, 1.6, 0.7],
  [310, 2, 0.7],
  [490, 1.8, 0.6],
  [770, 1.8, 0.6],
  [1240, 1.8, 0.5],
  [2100, 1.5, 0.4]
];

/** One-way lengths of the two manifolds in metres, and how loud they are. */
const MANIFOLDS = [
  { metres: 1.7, gain: 1 },
  { metres: 2.3, gain: 0.82 }
];

/** How the charger changes what comes out of the stack: a turbine evens the pulses out and hisses. */
const CHARGING = {
  none: { width: 1, shock: 0.7, rush: 1 },
  turbocharger: { width: 1.1, shock: 0.75, rush: 1.15 },
  blower: { width: 0.65, shock: 1, rush: 1 }
};

/**
 * The exhaust as heard at the stack. Every firing pushes out a sharp blowdown with a steep front; the flow tears
 * into noise that comes and goes with it, brighter the harder it blows. All of it runs through the manifold of its
 * bank, a pipe, and through the resonances of stack, silencer and roof.
 */
export function exhaust(sound: Diesel, firings: Firing[], course: Course, span: Span): Float32Array {
  const { length, sampleRate, spare } = span;
  const size = dieselSize(sound);
  const { width, shock: sharp, rush: hiss } = CHARGING[sound.charging];
  const white = span.noise(0);
  // Turbulence is strongest where its eddies are as large as the outlet, and falls from there.
  const rush = filter(white, section('lowPass', 700 / size, 0.5, sampleRate), span, 2 * hiss, spare.take());
  const torn = filter(white, section('bandPass', 2600, 0.35, sampleRate), span, hiss, spare.take());
  const breath = curveAlong(course, span, ({ effort, speed }) => 0.0011 * speed * (0.4 + effort));
  const sum = spare.take();
  const banks = sound.layout === 'vee' ? 2 : 1;

  for (let bank = 0; bank < banks; bank++) {
    const flow = spare.take();
    const shock = spare.take();
    const tear = spare.take();
    for (const { at, cylinder, strength, effort, degree, chance } of firings) {
      if (cylinder.bank !== bank) continue;
      const opened = at + (EXHAUST_OPENS * degree + cylinder.runner) * sampleRate;
      const angle = degree * 6000;
      const tau = BLOWDOWN * size * width * Math.sqrt(angle) * cylinder.width ** (1.3 - effort) * sampleRate;
      const blow = strength * (0.33 + 0.67 * effort);
      addPulse(flow, span, opened, tau, blow);
      const front = sharp * cylinder.edge ** (1.3 - 0.7 * effort) * blow;
      addPulse(shock, span, opened, 0.00026 * sampleRate, front * (0.4 + chance.uniform()));
      addPulse(tear, span, opened, 0.0011 * sampleRate, front * blow ** 0.5 * (0.4 + chance.uniform()));
    }
    const { metres, gain } = MANIFOLDS[bank];
    const late = turned(length, 0.17 + 0.14 * bank, sampleRate);
    const blown = blowing({ flow, shock, tear, breath, rush, torn }, gain, late, span);
    pipe(blown, (2 * metres * size) / HOT_SOUND, 0.3, 600 / size, span);
    addScaled(sum, blown, 1);
    spare.giveBack(flow, shock, tear, blown);
  }
  spare.giveBack(rush, torn, breath);
  return throughStack(sum, sound, span);
}

/** What blows out of a bank: its flow, the front of every blow, what tears; and the noises of both, which are read from `late` on. */
interface Blown {
  flow: Float32Array;
  shock: Float32Array;
  tear: Float32Array;
  breath: Float32Array;
  rush: Float32Array;
  torn: Float32Array;
}

function blowing(
  { flow, shock, tear, breath, rush, torn }: Blown,
  gain: number,
  late: number,
  { sampleRate, cyclic, spare }: Span
): Float32Array {
  const length = flow.length;
  const blown = spare.take();
  const change = 0.0009 * sampleRate;
  let before = cyclic ? flow[length - 1] : 0;
  for (let i = 0, j = late; i < length; i++) {
    const f = flow[i];
    // Radiated pressure follows the change of the flow.
    blown[i] =
      gain *
      (change * (f - before) +
        0.36 * shock[i] +
        (0.5 * f * f + breath[i]) * rush[j] +
        0.65 * tear[i] * torn[j]);
    before = f;
    if (++j === length) j = 0;
  }
  return blown;
}

/** Where to begin in noise that is to be so much later; taken round, which must be over before a ride is heard. */
function turned(length: number, seconds: number, sampleRate: Hertz): number {
  return (length - (Math.round(seconds * sampleRate) % length)) % length;
}

function throughStack(sum: Float32Array, sound: Diesel, span: Span): Float32Array {
  const { silencer } = sound;
  const size = dieselSize(sound);
  const chance = random(sound.seed ^ 0x57ac);
  const out = span.spare.take();
  // It takes some of everything, and more of what lies above a few hundred hertz.
  const all = 1.25 - 0.5 * silencer;
  const straight = all * (0.5 - 0.42 * silencer);
  addScaled(out, sum, straight);
  filter(sum, section('lowPass', 420 / size, 0.5, span.sampleRate), span, all * 0.35 * silencer, out);
  const resonances = RESONANCES.map(([usual, q, gain]) => {
    const frequency = (usual / size) * (1 + 0.06 * chance.gaussian());
    return { frequency, q, gain: all * gain * (1 - silencer * Math.min(0.8, frequency / 2500)) };
  });
  addResonances(sum, resonances, span, out);
  span.spare.giveBack(sum);
  return out;
}
