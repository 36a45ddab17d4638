import type { Mount } from '../acoustics/mounts/mount.js';
import type { Section } from './section.js';

/** Where and how large a section stands in a picture: pixels a millimetre, and where its speaker's mount lies. */
export interface SectionFit {
  scale: number;
  x: number;
  y: number;
}

/**
 * Width in millimetres that a kind of mount is drawn for: the drawing keeps its scale while a size is turned, and a
 * plate is seen to grow. A larger mount is drawn smaller.
 */
const USUAL: Record<Mount['kind'], number> = { free: 200, plate: 200, shell: 96, box: 76 };

/** Room for the string on either side, and above, in millimetres. */
const BESIDE = 7;
const ABOVE = 5;
const BELOW = 5;

/** The section as large as it goes, in the middle of a picture of this size. */
export function sectionFit(
  { bounds }: Pick<Section, 'bounds'>,
  kind: Mount['kind'],
  width: number,
  height: number
): SectionFit {
  const across = 2 * (Math.max(USUAL[kind] / 2, -bounds.left, bounds.right) + BESIDE);
  const down = ABOVE + bounds.bottom - bounds.top + BELOW;
  const scale = Math.max(0, Math.min(width / across, height / down));
  return { scale, x: width / 2, y: (height - down * scale) / 2 + (ABOVE - bounds.top) * scale };
}
