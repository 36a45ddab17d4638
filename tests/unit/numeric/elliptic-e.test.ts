import { describe, expect, it } from 'vitest';
import { ellipticE } from '../../../src/lib/numeric/elliptic-e.js';

describe('ellipticE', () => {
  it('is a quarter turn at 0 and 1 at 1', () => {
    expect(ellipticE(0)).toBe(Math.PI / 2);
    expect(ellipticE(1)).toBe(1);
  });

  it('falls all the way', () => {
    for (let i = 1; i <= 1000; i++) expect(ellipticE(i / 1000)).toBeLessThan(ellipticE((i - 1) / 1000));
  });

  it('refuses a parameter outside 0 … 1', () => {
    expect(() => ellipticE(-0.1)).toThrow('elliptic parameter m must be within 0 … 1, got -0.1');
    expect(() => ellipticE(1.1)).toThrow(RangeError);
    expect(() => ellipticE(NaN)).toThrow(RangeError);
  });
});
