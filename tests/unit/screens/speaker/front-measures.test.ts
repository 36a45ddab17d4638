import { expect, test } from 'vitest';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { frontMeasures, inFront } from '../../../../src/lib/screens/speaker/front-measures.js';

const OVAL = SPEAKERS.oval;

test('each size from the front has its leader on a line that runs the way of the size', () => {
  const scale = 5;
  // a frame of 40 × 28 mm, a cone of 34 × 22.5 mm, at 5 pixels a millimetre
  expect(frontMeasures(OVAL, 'frame', scale)).toMatchObject({ a: 100, b: 70, x: -109, y: -79 });
  expect(frontMeasures(OVAL, 'cone', scale)).toMatchObject({ a: 85, b: 56.25, x: 0, y: 0 });
  const end = (part: Parameters<typeof inFront>[1]) => inFront(OVAL, part, 400, 300, scale);
  expect(end('frameLength')).toEqual([200 - 60, 150 - 79]);
  expect(end('frameWidth')).toEqual([200 - 109, 150 + 42]);
  expect(end('coneLength')).toEqual([200 + 51, 150]);
  expect(end('coneWidth')).toEqual([200, 150 + 33.75]);
});
