import type { Installation } from '../acoustics/installation.js';
import { outsideSize } from '../acoustics/mounts/outside-size.js';
import type { CubicMetres } from '../units.js';
import type { Way } from './ways.js';

/**
 * What a mount takes of the inside of a vehicle: as everywhere (`outsideSize`). In the floor the body itself is the box, so that it takes what it
 * would in the roof: the bodies of its speakers.
 */
export function spaceTaken(way: Way, installation: Installation): CubicMetres {
  const { taken } = outsideSize(
    way === 'floor' ? { ...installation, mount: { kind: 'free' } } : installation
  );
  return taken;
}
