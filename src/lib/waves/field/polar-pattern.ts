import type { Listener } from '../../acoustics/listener.js';
import type { WaveProblem, WaveState } from '../solve/wave-problem.js';
import { transfer } from './transfer.js';

/**
 * The level of `transfer` round the mount in dB: 0 dB is the same cone in an endless plate, on its axis, at the same distance.
 *
 * @param listener the plane of the angles and the distance from the middle of the cone in metres, or none for the far field
 * @param anglesDeg any angles in degrees, 0 straight in front of the cone
 * @returns one level an angle, −Infinity where nothing is heard
 */
export function polarPattern(
  problem: WaveProblem,
  state: WaveState,
  { plane, distance }: Pick<Listener, 'plane' | 'distance'>,
  anglesDeg: Float64Array
): Float64Array {
  return anglesDeg.map((angleDeg) => {
    const { re, im } = transfer(problem, state, { angleDeg, plane, distance });
    return 20 * Math.log10(Math.hypot(re, im));
  });
}
