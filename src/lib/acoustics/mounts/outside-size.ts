import type { CubicMetres, Metres } from '../../units.js';
import type { Installation } from '../installation.js';
import { outlineArea, outlineLength, outlineWidth, turned } from '../outline.js';

/** Thickness of plates and walls unless told: thin plastic, as models are made of (common practice). */
export const USUAL_WALL: Metres = 0.001;

/** What room a speaker in its mount needs. */
export interface OutsideSize {
  length: Metres;
  width: Metres;
  /** From the front to whatever is behind most. */
  height: Metres;
  /** What it takes away from the inside of a model. */
  taken: CubicMetres;
}

/**
 * Outside sizes of a mount with its speaker behind it, and the volume that it takes from the inside of a model: of a box all within its
 * outside, of a plate its own and the bodies of its speakers, of free air and of a shell, which is the model itself, those bodies alone. The front of a
 * box is no wall more: its plate and the frame lie within its depth, or a roof or floor is its front.
 * A grille stands in front of plate, box and frame with its cavity.
 *
 * @param installation one that `checkInstallation` accepts
 * @param wall thickness of plate or walls, above 0
 */
export function outsideSize(
  { speaker, mount, turn, second }: Installation,
  wall: Metres = USUAL_WALL
): OutsideSize {
  const frame = turned(speaker.frame, turn);
  const [long, wide] = [outlineLength(frame), outlineWidth(frame)];
  const bodies = (second ? 2 : 1) * speaker.bodyVolume;
  const front = mount.grille ? mount.grille.cavity + mount.grille.thickness : 0;
  switch (mount.kind) {
    case 'free':
      return { length: long, width: wide, height: front + speaker.depth, taken: bodies };
    case 'plate':
      return {
        // A frame may stick out over its plate.
        length: Math.max(outlineLength(mount), long),
        width: Math.max(outlineWidth(mount), wide),
        height: front + wall + speaker.depth,
        taken: outlineArea(mount) * wall + bodies
      };
    case 'shell': {
      const ends = mount.ends === 'closed' ? 2 * wall : 0;
      return {
        length: mount.length + ends,
        width: mount.width + 2 * wall,
        height: mount.height + wall,
        taken: bodies
      };
    }
    case 'box': {
      const length = Math.max(mount.length + 2 * wall, long);
      const width = Math.max(mount.width + 2 * wall, wide);
      const height = front + mount.depth + wall;
      return { length, width, height, taken: length * width * height };
    }
  }
}
