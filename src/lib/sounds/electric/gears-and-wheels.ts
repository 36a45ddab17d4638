import type { Hertz } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import type { Span } from '../blocks/span.js';
import { eventChance } from '../blocks/event-chance.js';
import { addTone } from './add-tone.js';
import { addScaled, type CourseSteps } from './course-steps.js';
import { axleTeeth, type Electric, wheelRate } from './electric.js';
import { wholePhase } from './whole-phase.js';

/** Harmonics of the mesh: number, size. */
const MESH: [number, number][] = [
  [1, 0.42],
  [2, 0.2],
  [3, 0.1]
];

/** Bands of the roar of wheel and rail: frequency, Q, gain, and the power of the speed by which each grows. */
const ROAR: [Hertz, number, number, number][] = [
  [95, 0.7, 1.9, 0.5],
  [240, 0.7, 1.3, 0.75],
  [580, 0.6, 0.75, 1],
  [1500, 0.7, 0.25, 1.5]
];

/** The roar comes and goes more slowly than this, and by so much of a white noise. */
const ROUGH: Hertz = 4;
const ROUGHNESS = 11;

/** So much, and so often in a turn, what does not run true makes the sound swell. */
const RUN_OUT: [number, number][] = [
  [1, 0.3],
  [2, 0.15],
  [3, 0.1],
  [5, 0.06]
];

/**
 * What turns with the wheels. The mesh of the gears is a tone of as many periods a turn as the axle's gear has teeth; it
 * swells with every turn because no gear runs quite true. The roar of wheel on rail grows with the speed and shifts upward
 * (rolling noise: D. Thompson, Railway Noise and Vibration, 2009; flattened here, see docs/models).
 *
 * @returns mesh, added to `sum`, and roar, added to `air`, which is dulled later
 */
export function addGearsAndWheels(
  { sum, air }: { sum: Float32Array; air: Float32Array },
  sound: Electric,
  steps: CourseSteps,
  span: Span
): void {
  const { sampleRate } = span;
  if (sound.gears === 0 || steps.speed.every((speed) => speed === 0)) return;
  const top = wheelRate(sound, sound.topSpeed);
  const share = steps.speed.map((speed) => speed / top);
  const runOut = RUN_OUT.map(([perTurn, usual]) => {
    const chance = eventChance(sound.seed, 30, perTurn);
    return { perTurn, start: chance.uniform(), depth: usual * (0.6 + 0.8 * chance.uniform()) };
  });
  const swell = Float32Array.from(steps.turns, (turns) =>
    runOut.reduce(
      (now, { perTurn, start, depth }) => now + depth * Math.sin(2 * Math.PI * (perTurn * turns + start)),
      1
    )
  );

  MESH.forEach(([n, size], k) => {
    const level = share.map(
      (now, j) => sound.gears * size * swell[j] * now ** 0.5 * (0.45 + 0.55 * steps.effort[j])
    );
    const start = eventChance(sound.seed, 31, k).uniform();
    addTone(sum, wholePhase(steps, span, n * axleTeeth(sound), 0), level, start);
  });

  const roar = new Float32Array(span.length);
  for (const [frequency, q, gain, power] of ROAR) {
    if (frequency > 0.4 * sampleRate) continue;
    const band = filter(span.noise(0), section('bandPass', frequency, q, sampleRate), span, gain);
    addScaled(
      roar,
      band,
      share.map((now, j) => sound.gears * (0.7 + 0.3 * swell[j]) * now ** power)
    );
  }
  // No stretch of rail is as rough as the next.
  const rough = filter(span.noise(1), section('lowPass', ROUGH, 0.5, sampleRate), span, ROUGHNESS);
  for (let i = 0; i < roar.length; i++) air[i] += roar[i] * Math.max(0.4, 1 + rough[i]);
}
