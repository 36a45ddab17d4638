import { describe, expect, it } from 'vitest';
import { quantityFigure, quantityFrom, quantityWords } from '../../../src/lib/format/quantity-words.js';

describe('quantities as words', () => {
  it('are written in what the user reads, and read back', () => {
    expect(quantityWords(0.3, 'share', false)).toBe('30 %');
    expect(quantityFrom('30', 'share', false)).toBe(0.3);
    expect(quantityFrom('35', 'share', false)).toBe(0.35);
    expect(quantityWords(20, 'count', true)).toBe('20');
    expect(quantityWords(0.0003, 'area', false)).toBe('3 cm²');
    expect(quantityFrom('3', 'area', false)).toBe(0.0003);
    // 1 in² is 6.4516 cm² (25.4 mm squared).
    expect(quantityWords(6.4516e-4, 'area', true)).toBe('1 in²');
    expect(quantityFrom('1', 'area', true)).toBeCloseTo(6.4516e-4, 12);
    expect(quantityWords(0.102, undefined, false)).toBe('102 mm');
    expect(quantityFrom('wide', 'share', false)).toBeNaN();
  });
});

describe('gaps', () => {
  it('are told to a hundredth of a millimetre, and never as nothing', () => {
    const figure = (gap: number, inches: boolean) => quantityFigure(gap, 'gap', inches);
    expect([0.0001, 0.00005, 0.00015, 0.0009, 0.00204].map((gap) => figure(gap, false))).toEqual([
      '0.1',
      '0.05',
      '0.15',
      '0.9',
      '2'
    ]);
    // 0.1 mm are 0.003937 in.
    expect(figure(0.0001, true)).toBe('0.0039');
    expect(figure(quantityFrom('0.004', 'gap', true), true)).toBe('0.004');
    expect([figure(0, true), figure(0, false)]).toEqual(['0', '0']);
    expect(figure(0.0254, true)).toBe('1');
  });
});
