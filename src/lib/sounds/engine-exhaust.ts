import type { Hertz } from '../units.js';
import type { FiringPlan } from './firing-plan.js';
import { filter, section } from './blocks/filter.js';
import type { Random } from './blocks/random.js';

/** Adds a gamma pulse, (t/τ)²·e^(2−t/τ)/4 with its top of 1 at t = 2τ, starting at a real position of the loop. */
export function addPulse(loop: Float32Array, at: number, tau: number, height: number): void {
  const length = loop.length;
  const last = Math.min(length, Math.ceil(16 * tau));
  const first = Math.ceil(at);
  const fall = Math.exp(-1 / tau);
  let t = (first - at) / tau;
  let decay = (height * Math.exp(2 - t)) / 4;
  let i = first % length;
  for (let n = 0; n < last; n++) {
    loop[i] += t * t * decay;
    t += 1 / tau;
    decay *= fall;
    if (++i === length) i = 0;
  }
}

/** Rough resonances of silencer, stack and hood: frequency, Q, gain. */
const RESONANCES: [Hertz, number, number][] = [
  [88, 3, 0.9],
  [150, 4, 0.9],
  [245, 4, 0.8],
  [390, 5, 0.9],
  [610, 4, 0.8],
  [930, 4, 0.7],
  [1450, 3, 0.55],
  [2300, 2.5, 0.4]
];

/** One-way lengths of the two banks' manifolds in metres, and the speed of sound in hot exhaust in m/s. */
const MANIFOLDS = [1.7, 2.3];
const HOT_SOUND = 520;

/**
 * The exhaust as heard at the stack: every firing pushes out a sharp blowdown and a longer swell; the flow tears
 * into noise that comes and goes with it; both run through the manifold of their bank (an open pipe that sends its
 * wave back reversed and dulled) and through the resonances of silencer and hood.
 *
 * @param noise white noise of the loop's length, about RMS 1 in the band of 24 kHz
 */
export function engineExhaust(
  plan: FiringPlan,
  noise: Float32Array,
  chance: Random,
  sampleRate: Hertz
): Float32Array {
  const { firings, length, load, samplesPerDegree: degree } = plan;
  const ms = sampleRate / 1000;
  const sum = new Float32Array(length);
  // Turbulence is strongest where its eddies are as large as the outlet, and falls from there.
  const rush = filter(noise, section('lowPass', 750, 0.5, sampleRate), { sampleRate, cyclic: true }, 2.2);
  filter(noise, section('bandPass', 2600, 0.5, sampleRate), { sampleRate, cyclic: true }, 0.22, rush);

  MANIFOLDS.forEach((metres, bank) => {
    const flow = new Float32Array(length);
    const shock = new Float32Array(length);
    for (const { at, cylinder, strength } of firings) {
      if (cylinder % 2 !== bank) continue;
      const runner = 0.5 * ms * (cylinder % 3) + bank * 1.1 * ms;
      const width = 1 + 0.12 * chance.gaussian();
      addPulse(flow, at + runner, 6 * degree * Math.max(0.6, width), strength);
      addPulse(flow, at + runner + 20 * degree, 22 * degree, 0.35 * strength);
      addPulse(shock, at + runner, 0.22 * ms, strength * strength * (0.6 + 0.6 * chance.uniform()));
    }
    const breath = 0.03 + 0.27 * load;
    const offset = Math.floor(length * (0.17 + 0.31 * bank));
    const blown = new Float32Array(length);
    for (let i = 0, j = offset; i < length; i++) {
      const f = flow[i];
      // Radiated pressure follows the change of the flow.
      const change = f - flow[i === 0 ? length - 1 : i - 1];
      blown[i] =
        6 * degree * change * 0.9 +
        (0.34 - 0.12 * load) * shock[i] +
        0.5 * (f * f * (0.75 - 0.15 * load) + breath) * rush[j];
      if (++j === length) j = 0;
    }
    pipe(blown, (2 * metres * sampleRate) / HOT_SOUND, 0.55, Math.exp((-2 * Math.PI * 550) / sampleRate));
    for (let i = 0; i < length; i++) sum[i] += blown[i];
  });

  const out = sum.map((x) => 0.35 * x);
  for (const [frequency, q, gain] of RESONANCES)
    filter(
      sum,
      section('bandPass', frequency * (1 + 0.05 * chance.gaussian()), q, sampleRate),
      { sampleRate, cyclic: true },
      gain,
      out
    );
  return out;
}

/** A pipe in place, in its steady state over the loop: y(t) = x(t) − reflection·(y dulled)(t − delay). */
function pipe(loop: Float32Array, delay: number, reflection: number, dull: number): void {
  const length = loop.length;
  const source = loop.slice();
  const whole = Math.floor(delay);
  const part = delay - whole;
  let low = 0;
  // The first round only fills the pipe: what it leaves behind is what the second round starts from.
  for (let round = 0; round < 2; round++) {
    for (let i = round ? 0 : Math.max(0, length - 40 * whole); i < length; i++) {
      const a = loop[(i - whole + length) % length];
      const b = loop[(i - whole - 1 + length) % length];
      const back = a + part * (b - a);
      low = back + dull * (low - back);
      loop[i] = source[i] - reflection * low;
    }
  }
}
