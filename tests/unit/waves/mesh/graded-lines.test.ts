import { describe, expect, it } from 'vitest';
import { gradedLines } from '../../../../src/lib/waves/mesh/graded-lines.js';
import { close } from '../../../helpers/close.js';

describe('gradedLines', () => {
  for (const free of [true, false])
    for (const spacing of [1, 0.3, 0.0701, 0.01])
      it(`runs from 0 to the length in steps of at most ${spacing}, ${free ? 'free' : 'folded'}`, () => {
        const lines = gradedLines(1, spacing, free);
        expect(lines[0]).toBeCloseTo(0, 12);
        expect(lines.at(-1)).toBe(1);
        for (let i = 1; i < lines.length; i++) {
          expect(lines[i]).toBeGreaterThan(lines[i - 1]);
          expect(lines[i] - lines[i - 1]).toBeLessThanOrEqual(spacing * (1 + 1e-9));
        }
      });

  it('is even without a free edge', () => {
    const lines = gradedLines(2, 0.5, false);
    expect([...lines]).toEqual([0, 0.5, 1, 1.5, 2]);
  });

  it('crowds towards a free edge like n^1.7', () => {
    const lines = gradedLines(1, 0.02, true);
    const n = lines.length - 1;
    const distance = (i: number) => 1 - lines[n - i];
    close(Math.log2(distance(8) / distance(4)), 1.7, { abs: 1e-9, because: 'the law itself' });
  });
});
