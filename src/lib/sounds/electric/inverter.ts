import type { Hertz } from '../../units.js';
import type { Span } from '../blocks/span.js';
import { eventChance } from '../blocks/event-chance.js';
import { addTone } from './add-tone.js';
import type { CourseSteps } from './course-steps.js';
import { type Electric, periodsPerTurn } from './electric.js';
import { INVERTER_STEPS, stepShare } from './inverter-steps.js';
import { wholePhase } from './whole-phase.js';

/**
 * Lines of pulse width modulation, carrier·m + motor·n with m + n odd, and the carrier itself (D. G. Holmes and T. A. Lipo,
 * Pulse Width Modulation for Power Converters, 2003, ch. 3): m, n, size. Sizes are by eye on spectrograms.
 */
const LINES: [number, number, number][] = [
  [1, 0, 0.5],
  [1, -2, 0.3],
  [1, 2, 0.3],
  [2, -1, 0.75],
  [2, 1, 0.75],
  [2, -3, 0.2],
  [2, 3, 0.2],
  [3, -2, 0.22],
  [3, 2, 0.22],
  [4, -1, 0.14],
  [4, 1, 0.14]
];

/** With one pulse a half wave, multiples of the motors' frequency: six-step currents and the torque's ripple at 6 and 12. */
const SIX_STEP: [number, number][] = [
  [5, 0.4],
  [6, 0.8],
  [7, 0.35],
  [11, 0.2],
  [12, 0.4],
  [13, 0.18]
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
