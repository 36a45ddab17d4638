import { describe, expect, it } from 'vitest';
import { sliderStep } from '../../../../src/lib/plot/readout/slider-step.js';

describe('sliderStep', () => {
  it.each([
    ['ArrowRight', false, 1],
    ['ArrowUp', false, 1],
    ['ArrowLeft', false, -1],
    ['ArrowDown', false, -1],
    ['ArrowRight', true, 3],
    ['ArrowLeft', true, -3],
    ['PageUp', false, 3],
    ['PageDown', false, -3],
    ['Home', false, -Infinity],
    ['End', false, Infinity],
    ['1', false, null],
    [' ', false, null]
  ])('%s, shift %s: %s', (key, shift, steps) => {
    expect(sliderStep(key, shift)).toBe(steps);
  });
});
