import type { ComplexArray } from '../../numeric/complex-array.js';
import type { Surface } from '../mesh/surface.js';
import { edgeMidpoints } from './edge-midpoints.js';
import { columnAt, rowAt, type SectionGrid } from './section-grid.js';
import type { DipoleKernel } from './dipole-kernel.js';
import type { SectionImage, SectionImages } from './section-images.js';

/** Point dipoles as a section sees them. */
export interface WallDipoles {
  /** Where they lie: across and up, in metres, and the square of the distance from the section. */
  across: Float64Array;
  up: Float64Array;
  aside2: Float64Array;
  /** Their directions: across and up, and the direction towards the section times the distance from it. */
  normalAcross: Float64Array;
  normalUp: Float64Array;
  normalAside: Float64Array;
  /** Jump times area over 4π. */
  re: Float64Array;
  im: Float64Array;
  /** The same of a second dipole that lies the other way round of the middle of the picture. */
  otherRe: Float64Array;
  otherIm: Float64Array;
}

/** Squared metres that keep a pixel on a dipole from a division by 0; the same wherever dipoles are added or taken away. */
export const SOFT = 1e-14;

/**
 * The edge midpoints of a surface as point dipoles, for all images. Neighbours in one plane share those of their edge. Two images
 * that are mirrored left to right about the middle of the picture make one dipole with a second one.
 */
export function wallDipoles(
  surface: Surface,
  { across, toward, level, images }: SectionImages,
  { left, right }: SectionGrid
): WallDipoles {
  const { points } = surface.mesh;
  const { ends, normals, areas } = edgeMidpoints(surface);
  const each = areas.length;
  const isMirrored = ({ sign }: SectionImage) => sign[across] < 0;
  const paired = images
    .filter(isMirrored)
    .every(({ shift }) => Math.abs(left + right - shift[across]) < 1e-9 * (right - left));
  const first = paired ? images.filter((image) => !isMirrored(image)) : images;
  const dipoles = emptyDipoles(each * first.length);
  first.forEach(({ sign, shift, re, im }, g) => {
    const second = paired
      ? images.find(
          (image) =>
            isMirrored(image) &&
            [toward, 2].every((d) => image.sign[d] === sign[d] && image.shift[d] === shift[d])
        )
      : undefined;
    for (let p = 0, o = g * each; p < each; p++, o++) {
      const [a, b] = [ends[2 * p], ends[2 * p + 1]];
      const place = (d: number) => (sign[d] * (points[3 * a + d] + points[3 * b + d])) / 2 + shift[d];
      const aside = level - place(toward);
      dipoles.across[o] = place(across);
      dipoles.up[o] = place(2);
      dipoles.aside2[o] = aside * aside + SOFT;
      dipoles.normalAcross[o] = sign[across] * normals[3 * p + across];
      dipoles.normalUp[o] = sign[2] * normals[3 * p + 2];
      dipoles.normalAside[o] = sign[toward] * normals[3 * p + toward] * aside;
      const share = areas[p] / (8 * Math.PI);
      dipoles.re[o] = share * (re[a] + re[b]);
      dipoles.im[o] = share * (im[a] + im[b]);
      if (!second) continue;
      dipoles.otherRe[o] = share * (second.re[a] + second.re[b]);
      dipoles.otherIm[o] = share * (second.im[a] + second.im[b]);
    }
  });
  return dipoles;
}

function emptyDipoles(count: number): WallDipoles {
  const zeros = () => new Float64Array(count);
  return {
    across: zeros(),
    up: zeros(),
    aside2: zeros(),
    normalAcross: zeros(),
    normalUp: zeros(),
    normalAside: zeros(),
    re: zeros(),
    im: zeros(),
    otherRe: zeros(),
    otherIm: zeros()
  };
}

/**
 * Adds the field of dipoles, n·d·(1 + jkr)·e^{−jkr}/r³ of each, at the middle of the pixels: 1/r³ + k²/(2r) as it is, the rest
 * from a table. What the second dipole of a pair does at a pixel, the first would do at the pixel opposite.
 */
export function addDipoles(
  dipoles: WallDipoles,
  { half, values, perMetre }: DipoleKernel,
  grid: SectionGrid,
  sum: ComplexArray
): void {
  const { across, up, aside2, normalAcross, normalUp, normalAside, re, im, otherRe, otherIm } = dipoles;
  const count = re.length;
  const { re: halfRe, im: halfIm } = half;
  // what is the same along a row: the part of r² and of n·d that does not lie across
  const square = new Float64Array(count);
  const facing = new Float64Array(count);
  for (let row = 0; row < grid.rows; row++) {
    const z = rowAt(grid, row);
    for (let s = 0; s < count; s++) {
      const rise = z - up[s];
      square[s] = aside2[s] + rise * rise;
      facing[s] = normalAside[s] + normalUp[s] * rise;
    }
    for (let column = 0; column < grid.columns; column++) {
      const x = columnAt(grid, column);
      let ownRe = 0;
      let ownIm = 0;
      let oppositeRe = 0;
      let oppositeIm = 0;
      for (let s = 0; s < count; s++) {
        const step = x - across[s];
        const r = Math.sqrt(square[s] + step * step);
        const inverse = 1 / r;
        const at = r * perMetre;
        const cell = at | 0;
        const share = at - cell;
        const v = 2 * cell;
        const f = values[v];
        const g = values[v + 1];
        const height = facing[s] + normalAcross[s] * step;
        const kr = height * (inverse * (inverse * inverse + halfRe) - f - share * (values[v + 2] - f));
        const ki = height * (inverse * halfIm - g - share * (values[v + 3] - g));
        ownRe += kr * re[s] - ki * im[s];
        ownIm += kr * im[s] + ki * re[s];
        oppositeRe += kr * otherRe[s] - ki * otherIm[s];
        oppositeIm += kr * otherIm[s] + ki * otherRe[s];
      }
      const pixel = row * grid.columns + column;
      const opposite = (row + 1) * grid.columns - 1 - column;
      sum.re[pixel] += ownRe;
      sum.im[pixel] += ownIm;
      sum.re[opposite] += oppositeRe;
      sum.im[opposite] += oppositeIm;
    }
  }
}
