import { expect, test } from 'vitest';
import { SpareArrays } from '../../../../src/lib/sounds/blocks/spare-arrays.js';

test('what is given back is used again, as zeros; what is not, never', () => {
  const spare = new SpareArrays(5);
  const [one, two] = [spare.take().fill(1), spare.take().fill(2)];
  expect(two).not.toBe(one);
  spare.giveBack(one);
  const again = spare.take();
  expect(again).toBe(one);
  expect(again).toEqual(new Float32Array(5));
  expect(spare.take()).not.toBe(two);
  expect(two).toEqual(new Float32Array(5).fill(2));
});
