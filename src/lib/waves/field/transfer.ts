import type { Listener } from '../../acoustics/listener.js';
import type { WaveProblem, WaveState } from '../solve/wave-problem.js';
import type { Complex } from '../../numeric/complex.js';
import { farField } from './far-field.js';
import { fieldAt } from './field-at.js';
import { waysTo, type Way } from './ways.js';

/**
 * What a listener hears of one piston over the same volume velocity in an endless plate, on its axis, at the same distance from the
 * middle of all cones: p/(jωρU·e^{−jkr}/(2πr)), in the far field or at a distance. Over a board the endless plate stays one without
 * a board.
 *
 * @param listener any angle in degrees, over a board from straight up; a distance in metres, or none for the far field
 * @returns 0 below the board
 */
export function transfer(problem: WaveProblem, state: WaveState, listener: Listener, piston = 0): Complex {
  const sum: Complex = { re: 0, im: 0 };
  for (const way of waysTo(problem, listener)) {
    const { re, im } = transferOn(problem, state, way, piston);
    const cos = way.ratio * Math.cos(state.k * way.longer);
    const sin = -way.ratio * Math.sin(state.k * way.longer);
    sum.re += re * cos - im * sin;
    sum.im += re * sin + im * cos;
  }
  return sum;
}

/** The same for one way alone, against the endless plate at the distance on this way. */
export function transferOn(
  problem: WaveProblem,
  state: WaveState,
  { direction, distance }: Way,
  piston = 0
): Complex {
  // what the board reflects comes on the other way
  const own = problem.surface.copies;
  if (distance === undefined) return farField(problem, state, direction, piston, own);
  const [x, y, z] = problem.middle;
  const p = fieldAt(
    problem,
    state,
    [x + distance * direction[0], y + distance * direction[1], z + distance * direction[2]],
    piston,
    own
  );
  const scale = (2 * Math.PI * distance) / problem.pistons[piston].area;
  const cos = scale * Math.cos(state.k * distance);
  const sin = scale * Math.sin(state.k * distance);
  return { re: p.re * cos - p.im * sin, im: p.re * sin + p.im * cos };
}
