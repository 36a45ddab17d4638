import { describe, expect, it } from 'vitest';
import { levelWords } from '../../../../src/lib/screens/hall/level-words.js';

const usual = { difference: 8.2, against: 'Free air', isAgainst: false };
const said = (part: Partial<typeof usual> | { difference: null }): string => {
  const { verdict, rest } = levelWords({ ...usual, ...part });
  return `${verdict} ${rest}`.trim();
};

describe('levelWords', () => {
  it('says how loud a mount is, against which one', () => {
    expect(said({})).toBe('8 dB louder than free air');
    expect(said({ difference: -3 })).toBe('3 dB quieter than free air');
    expect(said({ difference: 0.3 })).toBe('just as loud as free air');
  });
  it('says which one the others are compared with, and when nothing is known yet', () => {
    expect(said({ isAgainst: true })).toBe('To compare with the others are louder or quieter');
    expect(said({ difference: null })).toBe('Listening …');
  });
  it('shortens the other one’s name', () => {
    expect(levelWords({ ...usual, against: 'x'.repeat(80) }).rest.length).toBeLessThan(60);
  });
});
