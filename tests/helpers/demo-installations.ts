import type { Installation } from '../../src/lib/acoustics/installation.js';
import type { Mount } from '../../src/lib/acoustics/mounts/mount.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';

/** The oval speaker of 28 × 40 mm in a mount. */
export function ovalIn(mount: Mount, turn: 0 | 90 = 0): Installation {
  return { speaker: SPEAKERS.oval, mount, turn };
}

/** The mounts of the demo: free air, two plates, a shell and a box. */
export const DEMO: Record<string, Installation> = {
  'free air': ovalIn({ kind: 'free' }),
  'flat plate': ovalIn({ kind: 'plate', shape: 'rectangle', length: 0.1524, width: 0.1016, offset: [0, 0] }),
  'round plate': ovalIn({ kind: 'plate', shape: 'round', diameter: 0.1, offset: [0, 0] }),
  'cab body': ovalIn({ kind: 'shell', length: 0.152, width: 0.033, height: 0.04, ends: 'closed', offset: 0 }),
  'closed box': ovalIn({ kind: 'box', length: 0.042, width: 0.029, depth: 0.017 })
};

export const AIR = { temperatureC: 20 };
export const IN_FRONT = { angleDeg: 0, plane: 'length' } as const;
