import type { Hertz } from '../units.js';
import type { FiringPlan } from './firing-plan.js';
import { filter, section } from './blocks/filter.js';
import type { Random } from './blocks/random.js';

/** What rings when metal is struck: frequency, Q, gain; the first three are castings, the others small parts. */
const PARTS: [Hertz, number, number][] = [
  [720, 4, 1],
  [1130, 4, 1],
  [1780, 3.5, 0.8],
  [2600, 5, 0.9],
  [3700, 5, 0.9],
  [5300, 4, 0.7]
];

/**
 * Injectors, valves and combustion as heard through the block: at every firing a few short bursts of noise at their
 * own crank angles, each cylinder striking its own mixture of parts; they ring and die away.
 *
 * @param noise white noise of the loop's length
 */
export function engineMechanics(
  plan: FiringPlan,
  noise: Float32Array,
  chance: Random,
  sampleRate: Hertz
): Float32Array {
  const { firings, length, load, samplesPerDegree: degree } = plan;
  const ms = sampleRate / 1000;
  const blows = PARTS.map(() => new Float32Array(length));

  const strike = (at: number, part: number, height: number, decay: number) => {
    const loop = blows[part];
    const fall = Math.exp(-1 / decay);
    const last = Math.ceil(7 * decay);
    let i = ((Math.round(at) % length) + length) % length;
    for (let n = 0, size = height; n < last; n++, size *= fall) {
      loop[i] += size * noise[i];
      if (++i === length) i = 0;
    }
  };

  for (const { at, cylinder, strength } of firings) {
    const loudness = () => Math.exp(0.45 * chance.gaussian());
    const near = 0.5 + 0.5 * Math.cos(cylinder * 2.4);
    for (let part = 0; part < 3; part++)
      strike(
        at + 4 * degree,
        part,
        (0.9 + 1.2 * load) * strength * loudness(),
        (1.2 + chance.uniform()) * ms
      );
    strike(at - 6 * degree, 3 + (cylinder % 3), (0.7 + near) * loudness(), 0.5 * ms);
    strike(at + 38 * degree, 3 + ((cylinder + 1) % 3), 0.55 * loudness(), 0.4 * ms);
    strike(at + (71 + 6 * near) * degree, 4, 0.4 * loudness(), 0.4 * ms);
  }

  const out = new Float32Array(length);
  PARTS.forEach(([usual, q, gain], part) => {
    const frequency = usual * (1 + 0.04 * chance.gaussian());
    if (frequency > 0.4 * sampleRate) return;
    filter(
      blows[part],
      section('bandPass', frequency, q, sampleRate),
      { sampleRate, cyclic: true },
      gain,
      out
    );
  });
  return out;
}
