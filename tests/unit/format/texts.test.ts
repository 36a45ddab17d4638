import { describe, expect, it } from 'vitest';
import { frequencyText } from '../../../src/lib/format/frequency-text.js';
import { levelText, signed } from '../../../src/lib/format/level-text.js';

describe('frequencyText', () => {
  it.each([
    [63, '63 Hz'],
    [62.6, '63 Hz'],
    [999.4, '999 Hz'],
    [999.6, '1.0 kHz'],
    [1000, '1.0 kHz'],
    [1250, '1.25 kHz'],
    [1600, '1.6 kHz'],
    [12500, '12.5 kHz'],
    [16000, '16.0 kHz']
  ])('writes %d as %s', (frequency, text) => {
    expect(frequencyText(frequency)).toBe(text);
  });
});

describe('levelText', () => {
  it.each([
    [-5.2, '−5 dB'],
    [-0.3, '0 dB'],
    [0.3, '0 dB'],
    [3.5, '+4 dB'],
    [-Infinity, 'silent'],
    [NaN, 'no figure']
  ])('writes %d as %s', (levelDb, text) => {
    expect(levelText(levelDb)).toBe(text);
  });
  it('never signs zero', () => {
    expect(signed(-0.4)).toBe('0');
  });
});
