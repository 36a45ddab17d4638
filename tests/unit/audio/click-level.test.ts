import { describe, expect, it } from 'vitest';
import { raisedCosine } from '../../../src/lib/numeric/raised-cosine.js';
import { clickLevel } from '../../helpers/click-level.js';
import { close } from '../../helpers/close.js';

const RATE = 48000;
const sine = (frequency: number, gain: (n: number) => number) =>
  Float32Array.from({ length: RATE }, (_, n) => gain(n) * Math.sin((2 * Math.PI * frequency * n) / RATE));

describe('clickLevel, the meter of the browser tests', () => {
  it('finds nothing in a steady sine of 941 Hz', () => {
    expect(
      clickLevel(
        sine(941, () => 0.5),
        RATE
      ).clickDb
    ).toBeLessThan(-130);
  });

  it('reads the level of what is above 8 kHz', () => {
    const low = sine(500, () => 0.5);
    const both = sine(10000, () => 0.0005).map((x, n) => x + low[n]);
    close(clickLevel(both, RATE).clickDb, -60, { abs: 0.1, because: 'a thousandth of the peak' });
  });

  it('hears a hard step of the gain, and where it is', () => {
    const { clickDb, clickFrame } = clickLevel(
      sine(941, (n) => (n < 24010 ? 0.5 : 0.1)),
      RATE
    );
    expect(clickDb).toBeGreaterThan(-20);
    close(clickFrame, 24010, { abs: 3, because: 'the filter has linear phase' });
  });

  it('hears a linear fade of 25 ms, and not a raised cosine', () => {
    const fade = (shape: (u: number) => number) =>
      clickLevel(
        sine(941, (n) => 0.5 - 0.4 * shape(Math.min(1, Math.max(0, (n - 24010) / 1200)))),
        RATE
      );
    expect(fade((u) => u).clickDb).toBeGreaterThan(-90);
    expect(fade(raisedCosine).clickDb).toBeLessThan(-105);
  });
});
