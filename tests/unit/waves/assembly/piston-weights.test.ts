import { describe, expect, it } from 'vitest';
import { outlineArea, type Outline } from '../../../../src/lib/acoustics/outline.js';
import { pistonWeights } from '../../../../src/lib/waves/assembly/piston-weights.js';
import { surfaceOf } from '../../../../src/lib/waves/mesh/surface.js';
import { unfoldMesh } from '../../../helpers/unfold-mesh.js';
import { close } from '../../../helpers/close.js';
import { coarse, OVAL } from '../wave-cases.js';

const quarter = surfaceOf(coarse('shell'));
const whole = surfaceOf(unfoldMesh(quarter.mesh));

const outlines: Outline[] = [
  OVAL,
  { shape: 'rectangle', length: 0.031, width: 0.019 },
  { shape: 'round', diameter: 0.02 },
  { shape: 'round', diameter: 0.001 }
];

describe('pistonWeights', () => {
  for (const outline of outlines)
    for (const middle of [
      [0, 0],
      [0.021, 0.002]
    ] as const)
      it(`adds up to the cone's area and middle: ${outline.shape} at ${middle.join(', ')}`, () => {
        const [q] = pistonWeights(whole, { outline, middle: [...middle, 0] });
        const { nodes } = whole.classes[0];
        let [area, x, y] = [0, 0, 0];
        q!.forEach((share, i) => {
          area += share;
          x += share * whole.mesh.points[3 * nodes[i]];
          y += share * whole.mesh.points[3 * nodes[i] + 1];
        });
        close(area, outlineArea(outline), { rel: 1e-12, because: 'scaled to it' });
        close(x / area, middle[0], { abs: 1e-12, because: 'hats add up to linear functions' });
        close(y / area, middle[1], { abs: 1e-12, because: 'hats add up to linear functions' });
      });

  it('excites the even class only from the middle, two classes from along the length, all four from anywhere', () => {
    const excited = (middle: [number, number]) =>
      pistonWeights(quarter, { outline: OVAL, middle: [...middle, 0] }).map((q) => q !== null);
    expect(excited([0, 0])).toEqual([true, false, false, false]);
    expect(excited([0.02, 0])).toEqual([true, true, false, false]);
    expect(excited([0.02, 0.001])).toEqual([true, true, true, true]);
  });

  it('refuses a cone beside the surface', () => {
    expect(() => pistonWeights(quarter, { outline: OVAL, middle: [1, 1, 0] })).toThrow(
      /does not lie on the surface/
    );
  });
});
