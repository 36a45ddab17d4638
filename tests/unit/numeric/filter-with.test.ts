import { describe, expect, it } from 'vitest';
import { LoopFilter } from '../../../src/lib/numeric/filter-with.js';
import { close } from '../../helpers/close.js';
import { noise } from '../../helpers/noise.js';

/** The circular convolution by its definition. */
function direct(loop: Float32Array, h: Float32Array): Float64Array {
  return Float64Array.from(loop, (_, n) => {
    let sum = 0;
    for (let m = 0; m < h.length; m++) {
      const at = (((n - m) % loop.length) + loop.length) % loop.length;
      sum += h[m] * loop[at];
    }
    return sum;
  });
}

describe('LoopFilter', () => {
  const cases: [loop: number, taps: number, response: number][] = [
    [1, 1, 1],
    [1, 64, 64],
    [7, 64, 64],
    [63, 64, 64],
    [64, 64, 64],
    [65, 64, 40],
    [193, 64, 64],
    [1000, 64, 64],
    [5000, 300, 300],
    [5000, 300, 1],
    [100, 2048, 2048]
  ];
  for (const [length, taps, response] of cases)
    it(`is the circular convolution: loop of ${length}, ${response} of ${taps} taps`, () => {
      const loop = Float32Array.from(noise(length, 1));
      const h = Float32Array.from(noise(response, 2));
      const got = new LoopFilter(loop, taps).through(h);
      const expected = direct(loop, h);
      expect(got.length).toBe(length);
      const size = Math.sqrt(response);
      for (let n = 0; n < length; n++)
        close(got[n], expected[n], {
          abs: 2e-6 * size,
          because: `sample ${n}: single precision of the spectra`
        });
    });

  it('can be used again and again, in any order', () => {
    const loop = Float32Array.from(noise(3000, 3));
    const filter = new LoopFilter(loop, 128);
    const a = Float32Array.from(noise(128, 4));
    const first = filter.through(a);
    filter.through(Float32Array.from(noise(100, 5)));
    expect(filter.through(a)).toEqual(first);
  });

  it('delays a loop round its seam', () => {
    const loop = Float32Array.from(noise(500, 6));
    const h = new Float32Array(70);
    h[64] = 1;
    const got = new LoopFilter(loop, 70).through(h);
    for (let n = 0; n < 500; n++)
      close(got[n], loop[(n + 436) % 500], { abs: 1e-6, because: 'single precision' });
  });

  it('refuses an empty loop and a response longer than its taps', () => {
    expect(() => new LoopFilter(new Float32Array(0), 64)).toThrow(
      'a loop must have at least one sample, got 0'
    );
    expect(() => new LoopFilter(new Float32Array(9), 0)).toThrow(RangeError);
    expect(() => new LoopFilter(new Float32Array(9), 8).through(new Float32Array(9))).toThrow(
      'an impulse response must have at most 8 samples, got 9'
    );
  });
});
