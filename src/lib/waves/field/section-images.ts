import type { Metres } from '../../units.js';
import type { WaveProblem, WaveState } from '../solve/wave-problem.js';
import type { SectionGrid } from './section-grid.js';

/** One copy of the meshed part as a section sees it, with the jumps it carries. */
export interface SectionImage {
  /** Of the axis that runs across the picture, and of the one towards the viewer. */
  across: 1 | -1;
  toward: 1 | -1;
  /** The jump over jωρ·v at every node of the mesh, 0 on free edges. */
  re: Float64Array;
  im: Float64Array;
}

export interface SectionImages {
  /** The axis that runs across the picture: 0 for x, 1 for y. */
  axis: 0 | 1;
  /** Where the section lies on the other axis. */
  level: Metres;
  images: SectionImage[];
}

/**
 * The images of the meshed part with all symmetry classes put together. Two that a section through a mirror plane cannot
 * tell apart become one.
 */
export function sectionImages(
  { surface, piston }: WaveProblem,
  { jumps }: WaveState,
  plane: SectionGrid['plane']
): SectionImages {
  const axis = plane === 'length' ? 0 : 1;
  const other = axis === 0 ? 1 : 0;
  const level = piston.middle[other];
  const nodes = surface.mesh.points.length / 3;
  const images: SectionImage[] = [];
  surface.images.forEach(({ sign }, g) => {
    const across = sign[axis] < 0 ? -1 : 1;
    const toward = level !== 0 && sign[other] < 0 ? -1 : 1;
    let image = images.find((known) => known.across === across && known.toward === toward);
    if (!image) {
      image = { across, toward, re: new Float64Array(nodes), im: new Float64Array(nodes) };
      images.push(image);
    }
    const { re, im } = image;
    surface.classes.forEach(({ character, nodes: kept }, c) => {
      const m = jumps[c];
      if (!m) return;
      kept.forEach((node, i) => {
        re[node] += character[g] * m.re[i];
        im[node] += character[g] * m.im[i];
      });
    });
  });
  return { axis, level, images };
}
