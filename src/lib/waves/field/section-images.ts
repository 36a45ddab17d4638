import type { Metres } from '../../units.js';
import type { Axis, Image, Vector } from '../mesh/symmetry.js';
import type { WaveProblem, WaveState } from '../solve/wave-problem.js';
import type { SectionGrid } from './section-grid.js';

/** One copy of the meshed part as a section sees it, with the jumps it carries. */
export interface SectionImage {
  /** x → sign·x + shift on every axis. */
  sign: Vector;
  shift: Vector;
  /** The jump over jωρ·v at every node of the mesh, 0 on free edges. */
  re: Float64Array;
  im: Float64Array;
}

export interface SectionImages {
  /** The axis that runs across the picture, and the one towards the viewer. */
  across: Axis;
  toward: Axis;
  /** Where the section lies on the latter. */
  level: Metres;
  images: SectionImage[];
}

/**
 * The images of the meshed part with all symmetry classes of one piston put together. Two that a section through a mirror
 * plane cannot tell apart become one.
 */
export function sectionImages(
  { surface, middle }: WaveProblem,
  { jumps }: WaveState,
  plane: SectionGrid['plane'],
  piston: number
): SectionImages {
  const [across, toward] = plane === 'length' ? ([0, 1] as const) : ([1, 0] as const);
  const level = middle[toward];
  const nodes = surface.mesh.points.length / 3;
  const images: SectionImage[] = [];
  surface.images.forEach((own, g) => {
    const seen = seenFrom(own, toward, level);
    let image = images.find((known) =>
      [0, 1, 2].every((d) => known.sign[d] === seen.sign[d] && known.shift[d] === seen.shift[d])
    );
    if (!image) {
      image = { ...seen, re: new Float64Array(nodes), im: new Float64Array(nodes) };
      images.push(image);
    }
    const { re, im } = image;
    surface.classes.forEach(({ character, nodes: kept }, c) => {
      const m = jumps[piston][c];
      if (!m) return;
      kept.forEach((node, i) => {
        re[node] += character[g] * m.re[i];
        im[node] += character[g] * m.im[i];
      });
    });
  });
  return { across, toward, level, images };
}

/** An image mirrored in the plane of the section itself, which makes no difference there, is taken for the one it mirrors. */
function seenFrom({ sign, shift }: Image, toward: Axis, level: Metres): { sign: Vector; shift: Vector } {
  if (sign[toward] > 0 || shift[toward] !== 2 * level) return { sign, shift };
  const [ownSign, ownShift]: [number, number, number][] = [[...sign], [...shift]];
  ownSign[toward] = 1;
  ownShift[toward] = 0;
  return { sign: ownSign, shift: ownShift };
}
