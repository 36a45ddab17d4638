import type { Installation } from '../../acoustics/installation.js';
import type { Listener } from '../../acoustics/listener.js';
import type { FieldImage } from '../../waves/field/field-on-grid.js';
import type { SectionGrid } from '../../waves/field/section-grid.js';

/** How the air in a section of a mount is pictured. Whoever draws the mount over it says so. */
export interface SectionPicture {
  /** The air that is shown around a mount in this plane; as much of it, and its board in the same place, as in the picture of another one. */
  grid(installation: Installation, plane: Listener['plane'], like?: SectionGrid): SectionGrid;
  /** Covers in these images, which are changed, what the hollow of the cone would show falsely. */
  coverCone(images: readonly FieldImage[], grid: SectionGrid, installation: Installation): void;
}
