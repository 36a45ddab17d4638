import { describe, expect, it } from 'vitest';
import { earCheckSamples } from '../../../src/lib/audio/ear-check.js';
import { close } from '../../helpers/close.js';

/** Amplitude of a tone in a stretch of samples. */
function amplitude(samples: Float32Array, frequency: number, sampleRate: number): number {
  let re = 0;
  let im = 0;
  samples.forEach((x, n) => {
    re += x * Math.cos((2 * Math.PI * frequency * n) / sampleRate);
    im += x * Math.sin((2 * Math.PI * frequency * n) / sampleRate);
  });
  return (2 * Math.hypot(re, im)) / samples.length;
}

describe('earCheckSamples', () => {
  it.each([44100, 48000])('is 250 Hz and then 2 kHz, at −30 dB, at %i Hz', (sampleRate) => {
    const samples = earCheckSamples(sampleRate);
    const middle = (from: number) => samples.subarray((from + 0.1) * sampleRate, (from + 0.5) * sampleRate);
    const peak = 10 ** (-30 / 20);
    const because = 'the middle of a tone has its full level';
    close(amplitude(middle(0), 250, sampleRate), peak, { rel: 0.01, because });
    close(amplitude(middle(0.85), 2000, sampleRate), peak, { rel: 0.01, because });
    close(amplitude(middle(0), 2000, sampleRate), 0, { abs: peak / 100, because: 'one tone at a time' });
    expect(Math.max(...samples)).toBeLessThanOrEqual(peak * 1.0001);
  });

  it('begins and ends in silence', () => {
    const samples = earCheckSamples(48000);
    expect(samples[0]).toBe(0);
    expect(samples[samples.length - 1]).toBe(0);
    expect(samples.length).toBe(2 * 0.85 * 48000);
  });
});
