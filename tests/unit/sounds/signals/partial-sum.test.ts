import { test } from 'vitest';
import { partialSum } from '../../../../src/lib/sounds/signals/partial-sum.js';
import { close } from '../../../helpers/close.js';

test('it is the sum of sines, for none and for many', () => {
  const sizes = [1, -0.5, 0.25, 0, 0.1, 0.05, 0.02, 0.01, 0.4];
  for (const phase of [0, 0.3, 1.7, Math.PI, -2.5, 1234.5]) {
    const expected = sizes.reduce((sum, size, n) => sum + size * Math.sin((n + 1) * phase), 0);
    close(partialSum(phase, sizes), expected, { abs: 1e-11, because: 'double precision' });
    close(partialSum(phase, []), 0, { because: 'nothing' });
  }
});
