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

/** A section with its kind of mount. */
type Fitted = Pick<Section, 'bounds'> & { kind: Mount['kind'] };

/** The one scale at which each of these sections has room in a picture of this size, in pixels a millimetre. */
export function oneScale(sections: readonly Fitted[], width: number, height: number): number {
  const scales = sections.map(({ bounds, kind }) => {
    const across = 2 * (Math.max(USUAL[kind] / 2, -bounds.left, bounds.right) + BESIDE);
    return Math.min(width / across, height / downOf(bounds));
  });
  return Math.max(0, Math.min(...scales));
}

/** The one scale at which each of these has room as it is, and need not be seen to grow. */
export function closeScale(all: readonly Pick<Section, 'bounds'>[], width: number, height: number): number {
  const scales = all.map(({ bounds }) => {
    const across = 2 * (Math.max(-bounds.left, bounds.right) + BESIDE);
    return Math.min(width / across, height / downOf(bounds));
  });
  return Math.max(0, Math.min(...scales));
}

/** The section at a scale, in the middle of a picture of this size. */
export function sectionFit(
  { bounds }: Pick<Section, 'bounds'>,
  scale: number,
  width: number,
  height: number
): SectionFit {
  const down = downOf(bounds);
  return { scale, x: width / 2, y: (height - down * scale) / 2 + (ABOVE - bounds.top) * scale };
}

function downOf(bounds: Section['bounds']): number {
  return ABOVE + bounds.bottom - bounds.top + BELOW;
}
