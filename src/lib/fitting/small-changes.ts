import type { Installation } from '../acoustics/installation.js';
import { checkInstallation } from '../acoustics/mounts/check-installation.js';
import type { Mount } from '../acoustics/mounts/mount.js';
import { outlineLength, outlineWidth } from '../acoustics/outline.js';
import { refusal } from '../acoustics/refusal.js';
import type { Metres } from '../units.js';

/** What may turn out a little different when one builds. */
export type ChangeName =
  | 'length'
  | 'width'
  | 'height'
  | 'depth'
  | 'place'
  | 'over the board'
  | 'gap'
  | 'resonance up'
  | 'resonance down';

interface SmallChange {
  name: ChangeName;
  installation: Installation;
}

/** How much a size is off, a gap round the frame, and a speaker's resonance from what its sheet says. */
export const OFF: Metres = 0.001;
export const GAP: Metres = 0.0001;
export const RESONANCE_OFF = 0.15;
/** The depth of the gap along the flow: the rim of the speaker's frame. */
const GAP_DEPTH: Metres = 0.002;

/**
 * An installation with each of its sizes so much larger, with the speaker as much nearer to the middle and the whole as much higher, with a gap round the
 * frame, and with a higher and a lower resonance of the speaker (its compliance as 1/f²; that real speakers differ by as much is an assumption,
 * docs/models/fitting.md). One at a time; what cannot be built is left out.
 */
export function smallChanges(installation: Installation): SmallChange[] {
  const { mount, speaker, board } = installation;
  const changes: SmallChange[] = [];
  const add = (name: ChangeName, changed: Partial<Installation>): void => {
    const other = { ...installation, ...changed };
    if (refusal(() => checkInstallation(other)) === null) changes.push({ name, installation: other });
  };
  for (const key of ['length', 'width', 'height', 'depth'] as const)
    if (key in mount) {
      const size = (mount as Partial<Record<typeof key, Metres>>)[key]!;
      add(key, { mount: { ...mount, [key]: size + OFF } as Mount });
    }
  if (mount.kind === 'shell')
    add('place', { mount: { ...mount, offset: mount.offset + (mount.offset > 0 ? -OFF : OFF) } });
  if (board) add('over the board', { board: { ...board, above: board.above + OFF } });
  if (mount.kind !== 'free' && !mount.leak) {
    const length = 2 * (outlineLength(speaker.frame) + outlineWidth(speaker.frame));
    add('gap', { mount: { ...mount, leak: { gap: GAP, length, depth: GAP_DEPTH } } });
  }
  for (const [name, factor] of [
    ['resonance up', 1 + RESONANCE_OFF],
    ['resonance down', 1 - RESONANCE_OFF]
  ] as const) {
    const motor = { ...speaker.motor, cms: speaker.motor.cms / factor ** 2 };
    add(name, { speaker: { ...speaker, motor } });
  }
  return changes;
}
