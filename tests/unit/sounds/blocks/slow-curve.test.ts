import { expect, test } from 'vitest';
import { slowCurve } from '../../../../src/lib/sounds/blocks/slow-curve.js';
import { close } from '../../../helpers/close.js';

test.each([8000, 44100, 96000])('at %i Hz a slow curve is itself at every sample', (sampleRate) => {
  const curve = slowCurve({ length: 1001, sampleRate }, (_, t) => Math.sin(2 * Math.PI * 5 * t));
  expect(curve).toHaveLength(1001);
  curve.forEach((x, i) =>
    // Straight lines over h miss a sine by at most (2πf·h)²/8.
    close(x, Math.sin((2 * Math.PI * 5 * i) / sampleRate), {
      abs: 4e-5,
      because: 'straight lines over 0.5 ms'
    })
  );
});
