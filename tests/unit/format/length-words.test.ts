import { describe, expect, test } from 'vitest';
import { lengthFigure, lengthFrom, lengthWords } from '../../../src/lib/format/length-words.js';
import { close } from '../../helpers/close.js';

describe('a length as a person types it', () => {
  test.each([
    ['102', false, 0.102],
    ['12,5', false, 0.0125],
    ['.5', false, 0.0005],
    ['−3,5', false, -0.0035],
    ['4.5 cm', false, 0.045],
    ['1 m', true, 1],
    ['1 9/16', true, 1.5625 * 0.0254],
    ['1-9/16"', false, 1.5625 * 0.0254],
    ['9/16', true, 0.5625 * 0.0254],
    ['3 1/2 in', false, 3.5 * 0.0254],
    ['40 mm', true, 0.04],
    ['2″', false, 0.0508]
  ])('%s (inches: %s) is %d m', (text, inches, metres) => {
    // An inch is 25.4 mm exactly (international yard and pound agreement of 1959).
    close(lengthFrom(text, inches), metres, { rel: 1e-12, because: 'rounding only' });
  });

  test.each(['', 'abc', '1e9', 'NaN', 'Infinity', '1 2', '1/', '/2', '3 mm mm', '--2', '1 9/16/2'])(
    '%j is no length',
    (text) => {
      expect(lengthFrom(text, false)).toBeNaN();
    }
  );

  test('a fraction over nothing is not finite', () => {
    expect(Number.isFinite(lengthFrom('1/0', true))).toBe(false);
  });
});

test('what is written is read back within half its last digit', () => {
  for (const inches of [false, true])
    for (let millimetre = -200; millimetre <= 400; millimetre += 0.37) {
      const text = lengthFigure(millimetre / 1000, inches);
      close(lengthFrom(text, inches), millimetre / 1000, {
        abs: inches ? (0.0254 / 128) * 1.001 : 0.0000502,
        because: 'written to a tenth of a millimetre or to 1/64 of an inch'
      });
    }
  expect(lengthWords(0.102, false)).toBe('102 mm');
  expect(lengthWords(0.102, true)).toBe('4 1/64 in');
});

test.each([
  ['1.5', '1.5'],
  ['1 1/2', '1.5'],
  ['1.55', '1.55'],
  ['1.555', '1.555'],
  ['1 9/16', '1 9/16'],
  ['0.375', '3/8'],
  ['63/64', '63/64'],
  ['2', '2'],
  ['−0.25', '−0.25'],
  ['0', '0'],
  ['40 mm', '1 37/64'],
  ['0.1 mm', '0']
])('%s in a size in inches is written as %s', (typed, written) => {
  // 40 mm are 1.5748 in; 1 37/64 in are 1.5781 (arithmetic).
  expect(lengthFigure(lengthFrom(typed, true), true)).toBe(written);
});
