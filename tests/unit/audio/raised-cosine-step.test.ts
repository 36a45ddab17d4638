import { describe, expect, it } from 'vitest';
import { raisedCosineStep } from '../../../src/lib/audio/raised-cosine-step.js';
import { raisedCosine } from '../../../src/lib/numeric/raised-cosine.js';
import { close } from '../../helpers/close.js';

/** What comes out of the filter for a signal that has been constant for ever and steps at the samples given. */
function filtered(taps: Float32Array, before: number, steps: [frame: number, to: number][], length: number) {
  const at = (n: number) => steps.reduce((value, [frame, to]) => (n >= frame ? to : value), before);
  return Array.from({ length }, (_, n) => taps.reduce((sum, tap, i) => sum + tap * at(n - i), 0));
}

describe('raisedCosineStep', () => {
  const taps = raisedCosineStep(0.025, 0.005, 48000);

  it('makes a raised cosine of a step, after the delay', () => {
    const out = filtered(taps, 0, [[0, 1]], 1600);
    for (let n = 0; n < out.length; n++)
      close(out[n], raisedCosine((n + 1 - 240) / 1200), { abs: 1e-6, because: 'taps are 32-bit floats' });
  });

  it('arrives exactly: its taps add up to 1 and none is negative', () => {
    close(
      taps.reduce((sum, tap) => sum + tap, 0),
      1,
      { abs: 1e-7, because: 'taps are 32-bit floats' }
    );
    expect(Math.min(...taps)).toBeGreaterThanOrEqual(0);
  });

  it('stays within the bounds of what goes in, however often that changes its mind', () => {
    const steps: [number, number][] = [7, 100, 350, 360, 900, 1100].map((frame, i) => [frame, (i + 1) % 2]);
    const out = filtered(taps, 0, steps, 3000);
    expect(Math.min(...out)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...out)).toBeLessThanOrEqual(1 + 1e-6);
    const complement = filtered(
      taps,
      1,
      steps.map(([frame, to]) => [frame, 1 - to]),
      3000
    );
    for (let n = 0; n < out.length; n++)
      close(out[n] + complement[n], 1, { abs: 1e-6, because: 'opposite steps keep their sum' });
  });
});
