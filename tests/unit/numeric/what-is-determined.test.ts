import { expect, test } from 'vitest';
import { isDetermined, whatIsDetermined } from '../../../src/lib/numeric/what-is-determined.js';
import { close } from '../../helpers/close.js';

test('a system with one solution has it, and leaves nothing open', () => {
  // 2x + y = 5, x − y = 1, by hand: x = 2, y = 1; the third follows from them
  const { one, open } = whatIsDetermined(
    [
      { coefficients: [2, 1], value: 5 },
      { coefficients: [1, -1], value: 1 },
      { coefficients: [3, 0], value: 6 }
    ],
    2
  );
  expect(open).toEqual([]);
  close(one[0], 2, { abs: 1e-12, because: 'x' });
  close(one[1], 1, { abs: 1e-12, because: 'y' });
});

test('what the equations leave open is found, what they determine all the same, too', () => {
  // x + y = 3 and z = 4: neither x nor y, but their sum and z
  const solutions = whatIsDetermined(
    [
      { coefficients: [1, 1, 0], value: 3 },
      { coefficients: [0, 0, 2], value: 8 }
    ],
    3
  );
  expect(solutions.open).toHaveLength(1);
  expect(isDetermined([1, 0, 0], solutions)).toBe(false);
  expect(isDetermined([0, 1, 0], solutions)).toBe(false);
  expect(isDetermined([1, 1, 0], solutions)).toBe(true);
  expect(isDetermined([0, 0, 1], solutions)).toBe(true);
  close(solutions.one[0] + solutions.one[1], 3, { abs: 1e-12, because: 'a solution' });
});

test('a column whose first pivot is 0 is solved by another row', () => {
  const { one } = whatIsDetermined(
    [
      { coefficients: [0, 1], value: 7 },
      { coefficients: [1, 0], value: 3 }
    ],
    2
  );
  expect(one).toEqual([3, 7]);
});

test('no equations leave everything open', () => {
  expect(whatIsDetermined([], 2).open).toEqual([
    [1, 0],
    [0, 1]
  ]);
});
