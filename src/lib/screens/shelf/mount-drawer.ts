import type { Board } from '../../acoustics/mounts/board.js';
import type { Mount } from '../../acoustics/mounts/mount.js';
import type { Setup } from '../../file/bench-file.js';
import { DEMO_MOUNTS } from '../../file/demo-bench.js';
import { RUNNING_CAB, TENDER_BOX } from '../../file/layout-bench.js';

/** A mount as it lies in the drawer. */
export interface DrawerMount {
  name: string;
  /** What it is, in a few words. */
  words: string;
  mount: Mount;
  /** Where its cone looks over a board; up unless told. */
  facing?: Board['facing'];
}

/**
 * What can be put on the shelf. The shells are those of the Carrow & Eastmoor, an invented club layout in HO; their
 * inside sizes are invented with it.
 */
export const MOUNT_DRAWER: readonly DrawerMount[] = [
  { name: 'Free air', words: 'the bare speaker', mount: DEMO_MOUNTS.free },
  {
    name: 'Flat plate',
    words: 'a rectangle of card or styrene',
    mount: DEMO_MOUNTS.plate
  },
  {
    name: 'Round plate',
    words: 'a disc',
    mount: { kind: 'plate', shape: 'round', diameter: 0.1, offset: [0, 0] }
  },
  {
    name: 'Cab body',
    words: 'no. 41, a full-width cab diesel',
    mount: DEMO_MOUNTS.shell
  },
  {
    name: 'No. 41 as it runs',
    words: 'the cab body with its chassis in',
    mount: RUNNING_CAB
  },
  {
    name: 'Tender',
    words: 'a box in the tender’s floor, its cone towards the track',
    mount: TENDER_BOX,
    facing: 'down'
  },
  {
    name: 'Tender body',
    words: 'the tender engine’s tender as a shell',
    mount: { kind: 'shell', length: 0.07, width: 0.03, height: 0.026, ends: 'closed', offset: 0 }
  },
  {
    name: 'Hood',
    words: 'the narrow hood switcher, 18 mm inside',
    mount: { kind: 'shell', length: 0.105, width: 0.018, height: 0.032, ends: 'closed', offset: 0 }
  },
  {
    name: 'Railbus',
    words: 'a railbus, open at both ends',
    mount: { kind: 'shell', length: 0.128, width: 0.032, height: 0.036, ends: 'open', offset: 0 }
  },
  {
    name: 'Closed box',
    words: 'glued up round the speaker’s back',
    mount: DEMO_MOUNTS.box
  }
];

/** A mount of the drawer with a speaker in it. */
export function setupOf({ name, mount, facing }: DrawerMount, speaker: string): Setup {
  return { name, speaker, turn: 0, ...(facing && { facing }), notes: '', mount };
}
