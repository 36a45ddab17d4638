import { ellipticE } from '../../numeric/elliptic-e.js';
import type { Metres } from '../../units.js';
import { coneAverage } from './cone-average.js';
import type { Installation } from '../installation.js';
import { outlineLength, outlineWidth, turned, type Outline } from '../outline.js';
import { stringPath } from '../mounts/string-path.js';

/**
 * The arm d of the dipole that a cone and its back make: at low frequency the response of an open mount tends to
 * H = j·k·d. Averaged over the cone, for flat plates and for free air (a plate of the outline of the frame):
 *
 * - round plate of radius a: (2/π)·√(a² − r²)
 * - elliptic plate, semi-axes a ≥ b: (b/E(m))·√(1 − x²/a² − y²/b²), m = 1 − (b/a)²
 * - rectangle L × W: (b/E(m))·√[(1 − (2x/L)²)·(1 − (2y/W)²)], a and b of the ellipse of equal area and aspect ratio
 *
 * The first two are the exact potential flow (H. Lamb, Hydrodynamics, 6th ed., arts. 102, 108 and 114, article
 * numbers from memory); the third is a fit to the wave solution: 0.3 dB in the middle (sides of 3 : 1: 0.5 dB), 0.8 dB at worst
 * far off it.
 * A shell has d = D/π with the unfolded string D, not averaged (about 1 dB). A box is no dipole: null.
 *
 * @param installation one that `checkInstallation` accepts
 */
export function arm(installation: Installation): Metres | null {
  const { speaker, mount, turn } = installation;
  const cone = turned(speaker.cone, turn);
  switch (mount.kind) {
    case 'box':
      return null;
    case 'free':
      return flatArm(turned(speaker.frame, turn), cone, [0, 0]);
    case 'plate':
      return flatArm(mount, cone, mount.offset);
    case 'shell':
      return stringPath(installation)!.length / Math.PI;
  }
}

function flatArm(plate: Outline, cone: Outline, offset: readonly [Metres, Metres]): Metres {
  const length = outlineLength(plate);
  const width = outlineWidth(plate);
  const shorter = Math.min(length, width);
  const longer = Math.max(length, width);
  const flow = 1 / ellipticE(1 - (shorter / longer) ** 2);
  if (plate.shape === 'rectangle') {
    const mean = coneAverage(cone, offset, (x, y) =>
      root((1 - ((2 * x) / length) ** 2) * (1 - ((2 * y) / width) ** 2))
    );
    return (shorter / Math.sqrt(Math.PI)) * flow * mean;
  }
  const mean = coneAverage(cone, offset, (x, y) =>
    root(1 - ((2 * x) / length) ** 2 - ((2 * y) / width) ** 2)
  );
  return (shorter / 2) * flow * mean;
}

/** The square root, 0 where rounding made its argument negative at the edge. */
function root(x: number): number {
  return x > 0 ? Math.sqrt(x) : 0;
}
