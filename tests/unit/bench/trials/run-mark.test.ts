import { expect, test } from 'vitest';
import { withLift } from '../../../../src/lib/bench/circumstances.js';
import { withMountPrice, withSpeakerPrice, withWall } from '../../../../src/lib/bench/prices.js';
import { runMark } from '../../../../src/lib/bench/trials/run-mark.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';

test('a lift is another bench to compare on; what things cost and how thick walls are is not', () => {
  const demo = demoBench();
  const mark = runMark(demo, [1, 3]);
  expect(runMark(withLift(demo, { gainDb: 6, below: 300 }), [1, 3])).not.toBe(mark);
  const dearer = withWall(withMountPrice(withSpeakerPrice(demo, 'oval', 9), 3, 4), 3, 0.002);
  expect(runMark(dearer, [1, 3])).toBe(mark);
});
