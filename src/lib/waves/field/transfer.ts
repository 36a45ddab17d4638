import type { Listener } from '../../acoustics/listener.js';
import type { WaveProblem, WaveState } from '../solve/wave-problem.js';
import type { Complex } from '../../numeric/complex.js';
import { farField } from './far-field.js';
import { fieldAt } from './field-at.js';
import { listenerDirection } from './listener-point.js';

/**
 * What a listener hears of one piston over the same volume velocity in an endless plate, on its axis, at the same distance from the
 * middle of all cones: p/(jωρU·e^{−jkr}/(2πr)), in the far field or at a distance.
 *
 * @param listener any angle in degrees; a distance in metres, or none for the far field
 */
export function transfer(problem: WaveProblem, state: WaveState, listener: Listener, piston = 0): Complex {
  const direction = listenerDirection(listener);
  const { distance } = listener;
  if (distance === undefined) return farField(problem, state, direction, piston);
  const [x, y, z] = problem.middle;
  const p = fieldAt(
    problem,
    state,
    [x + distance * direction[0], y + distance * direction[1], z + distance * direction[2]],
    piston
  );
  const scale = (2 * Math.PI * distance) / problem.pistons[piston].area;
  const cos = scale * Math.cos(state.k * distance);
  const sin = scale * Math.sin(state.k * distance);
  return { re: p.re * cos - p.im * sin, im: p.re * sin + p.im * cos };
}
