import type { Hertz } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import type { Span } from '../blocks/span.js';
import type { Course } from '../motion/course.js';
import { addBlowers } from './blowers.js';
import { courseSteps } from './course-steps.js';
import type { Electric } from './electric.js';
import { addGearsAndWheels } from './gears-and-wheels.js';
import { addInverterTones } from './inverter.js';
import { addLineHum } from './line-hum.js';

/** How loud each part is beside the wheels. */
const HUM = 0.08;
const BLOWERS = 0.3;
const INVERTER = 0.36;
/** What rushes is dulled above this by skirts and casings. */
const DULL: Hertz = 1900;

/**
 * An electric locomotive or motor coach along a course: hum, blowers, inverter, gears and wheels. The parts, their
 * proportions and the levels at the notches are described in docs/models/electric-sound.md.
 */
export function renderElectric(sound: Electric, course: Course, span: Span): Float32Array {
  const { length, sampleRate } = span;
  const steps = courseSteps(course, span);
  const sum = new Float32Array(length);
  const air = new Float32Array(length);
  addBlowers({ sum, air }, sound, steps, span, BLOWERS);
  addGearsAndWheels({ sum, air }, sound, steps, span);
  filter(air, section('lowPass', DULL, 0.6, sampleRate), span, 1, sum);
  addLineHum(sum, sound, steps, span, HUM);
  addInverterTones(sum, sound, steps, span, INVERTER);
  return filter(sum, section('highPass', 30, 0.7, sampleRate), span, 0.3);
}
