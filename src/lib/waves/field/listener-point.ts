import type { Listener } from '../../acoustics/listener.js';

/** The unit vector from the middle of the cone to a listener: along z at 0°, towards +x or +y at 90°. */
export function listenerDirection({
  angleDeg,
  plane
}: Pick<Listener, 'angleDeg' | 'plane'>): [number, number, number] {
  const angle = (angleDeg * Math.PI) / 180;
  const [along, across] = [Math.cos(angle), Math.sin(angle)];
  return plane === 'length' ? [across, 0, along] : [0, across, along];
}
