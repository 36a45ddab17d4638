import { expect, test } from 'vitest';
import { hornPitches, renderHorn } from '../../src/lib/sounds/horn.js';
import { close } from '../helpers/close.js';

test('the pitches are tempered on A = 440 Hz', () => {
  // ISO 16:1975 fixes A4 = 440 Hz; the others are 440·2^(n/12): A♭4, C5, E♭5, F5, B♭5 to three decimals.
  const expected = [415.305, 523.251, 622.254, 698.456, 932.328];
  hornPitches().forEach((pitch, i) => close(pitch, expected[i], { rel: 2e-6, because: 'three decimals' }));
});

test('the sounding pitches are those within ten cents', () => {
  const rate = 8000;
  const horn = renderHorn(rate);
  for (const pitch of hornPitches()) {
    const size = (frequency: number) => {
      let [re, im] = [0, 0];
      horn.forEach((x, i) => {
        re += x * Math.cos((2 * Math.PI * frequency * i) / rate);
        im += x * Math.sin((2 * Math.PI * frequency * i) / rate);
      });
      return Math.hypot(re, im);
    };
    const steps = Array.from({ length: 31 }, (_, i) => pitch * 2 ** ((i - 15) / 600));
    const loudest = steps.reduce((best, f) => (size(f) > size(best) ? f : best));
    expect(Math.abs(1200 * Math.log2(loudest / pitch))).toBeLessThan(10);
  }
});
