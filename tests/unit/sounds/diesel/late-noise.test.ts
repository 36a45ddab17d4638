import { expect, test } from 'vitest';
import { leadingSpan, loopSpan } from '../../../../src/lib/sounds/blocks/span.js';
import { lateNoise } from '../../../../src/lib/sounds/diesel/late-noise.js';

const loop = loopSpan(4000, 8000, 7);

test('it is the first stream, so much later and taken round', () => {
  const late = lateNoise(loop, 0.1);
  const noise = loop.noise(0);
  expect(late[0]).toBe(noise[3200]);
  expect(late[800]).toBe(noise[0]);
  expect([...late.subarray(800)]).toEqual([...noise.subarray(0, 3200)]);
  expect(lateNoise(loop, 0)).toEqual(noise);
});

test('what leads into a loop has the noise that the loop has at its end', () => {
  const lead = lateNoise(leadingSpan(3000, loop), 0.1);
  expect([...lead.subarray(2000)]).toEqual([...lateNoise(loop, 0.1).subarray(3000)]);
});
