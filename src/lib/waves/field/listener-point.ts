import type { Listener } from '../../acoustics/listener.js';

/**
 * The unit vector from the middle of the cone to a listener: along z at 0°, towards +x or +y at 90°.
 *
 * @param up −1 for a mount that is turned over about its length: then straight up is along −z, and to the side towards −y
 */
export function listenerDirection(
  { angleDeg, plane }: Pick<Listener, 'angleDeg' | 'plane'>,
  up: 1 | -1 = 1
): [number, number, number] {
  const angle = (angleDeg * Math.PI) / 180;
  const [along, across] = [up * Math.cos(angle), Math.sin(angle)];
  return plane === 'length' ? [across, 0, along] : [0, up * across, along];
}
