import type { Hertz } from '../../units.js';
import type { Span } from '../blocks/span.js';
import { eventChance } from '../blocks/event-chance.js';
import { addTone } from './add-tone.js';
import type { CourseSteps } from './course-steps.js';
import { type Electric, periodsPerTurn } from './electric.js';
import { INVERTER_STEPS, stepShare } from './inverter-steps.js';
import { wholePhase } from './whole-phase.js';

/**
 * Lines of the radial force between stator and rotor: m, n, size of carrier·m + motor·n. The force goes with the flux squared
 * (Maxwell's stress), and the flux has the motor's frequency and the lines of the modulated voltage, carrier·m + motor·n with
 * m + n odd (D. G. Holmes and T. A. Lipo, Pulse Width Modulation for Power Converters, 2003, ch. 3). So the force has their
 * sums and differences with the motor's, m + n even: carrier ± motor, carrier ± 3·motor, 2·carrier ± 2·motor and on, and twice
 * the motor's own. Which are strong: squared in the tests; sizes are by eye on spectrograms.
 */
const LINES: [number, number, number][] = [
  [0, 2, 0.3],
  [1, -1, 0.55],
  [1, 1, 0.55],
  [1, -3, 0.45],
  [1, 3, 0.45],
  [2, -2, 0.7],
  [2, 2, 0.7],
  [3, -1, 0.2],
  [3, 1, 0.2],
  [4, -2, 0.14],
  [4, 2, 0.14]
];

/** With one pulse a half wave the flux has the multiples 1, 5, 7, 11, 13 of the motors' frequency, and its square these. */
const SIX_STEP: [number, number][] = [
  [2, 0.3],
  [4, 0.3],
  [6, 0.8],
  [8, 0.25],
  [10, 0.2],
  [12, 0.4]
];

/** How strongly motors and chokes send out a frequency: broadly around 900 Hz. */
function radiated(frequency: Hertz): number {
  const x = frequency / 900;
  return (2 * x) / (1 + x * x);
}

/**
 * Adds the tones of the inverter to a sum: they follow the motors' frequency and jump where it changes its way of switching
 * (inverter-steps.ts); loud while the current is large, driving or braking, nothing while it stands.
 */
export function addInverterTones(
  sum: Float32Array,
  sound: Electric,
  steps: CourseSteps,
  span: Span,
  gain: number
): void {
  if (sound.inverter === 0) return;
  const perTurn = periodsPerTurn(sound);
  const motor = steps.speed.map((speed) => perTurn * speed);
  const current = steps.effort.map(
    (effort, k) => gain * sound.inverter * currentOf(effort, motor[k], steps.gain[k] * perTurn)
  );

  INVERTER_STEPS.forEach(({ carrier, multiple }, step) => {
    const loudness = current.map((size, k) => size * stepShare(step, motor[k]));
    // Where this step is not used at all there is nothing to make.
    if (loudness.every((size) => size === 0)) return;
    const lines: [number, number, number][] =
      multiple === 1 ? SIX_STEP.map(([n, size]) => [0, n, size]) : LINES;
    lines.forEach(([m, n, size], line) => {
      const perMotor = m * multiple + n;
      const level = new Float32Array(loudness.length);
      for (let k = 0; k < level.length; k++)
        if (loudness[k] > 0) level[k] = loudness[k] * size * radiated(m * carrier + perMotor * motor[k]);
      const phase = wholePhase(steps, span, perMotor * perTurn, m * carrier);
      addTone(sum, phase, level, eventChance(sound.seed, 11 + step, line).uniform());
    });
  });
}

/**
 * The motors' current as a share of the largest: the effort, or what braking takes; it needs a turning motor.
 *
 * @param motor the motors' frequency in Hz
 * @param change of it, in Hz/s
 */
function currentOf(effort: number, motor: Hertz, change: number): number {
  const turning = Math.min(1, motor / 0.6);
  const braking = Math.min(1, Math.max(0, -change / 14));
  return turning * (0.18 + 0.82 * Math.max(effort, 0.7 * braking));
}
