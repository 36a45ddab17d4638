import { describe, expect, it } from 'vitest';
import { shortened } from '../../../src/lib/format/shortened.js';

describe('shortened', () => {
  it('leaves alone what fits', () => {
    expect(shortened('no. 41 climbing.wav', 19)).toBe('no. 41 climbing.wav');
  });
  it('leaves the middle out, keeps both ends and stays within the measure', () => {
    const text = 'a very long recording of no. 41 climbing out of the yard, take 7.wav';
    for (const most of [9, 20, 40]) {
      const short = shortened(text, most);
      expect([...short].length).toBeLessThanOrEqual(most);
      expect(short).toContain('…');
      expect(text.startsWith(short.split('…')[0])).toBe(true);
      expect(text.endsWith(short.split('…')[1])).toBe(true);
    }
  });
  it('counts characters, and never cuts one in two', () => {
    expect(shortened('🚂'.repeat(10), 5)).toBe('🚂🚂🚂…🚂');
  });
});
