import { describe, expect, it } from 'vitest';
import { ruleOfThumb } from '../../../src/lib/acoustics/rule/rule-of-thumb.js';
import {
  fftFrequencies,
  impulseResponse,
  PRE_DELAY,
  tapsFor
} from '../../../src/lib/numeric/impulse-response.js';
import { logGrid } from '../../../src/lib/numeric/log-grid.js';
import { close } from '../../helpers/close.js';
import { AIR, DEMO, IN_FRONT } from '../../helpers/demo-installations.js';

/** The transform of `h` at frequency f, the pre-delay taken away. */
function transformAt(h: Float32Array, f: number, sampleRate: number): { re: number; im: number } {
  let re = 0;
  let im = 0;
  for (let n = 0; n < h.length; n++) {
    const turn = (-2 * Math.PI * f * (n - PRE_DELAY)) / sampleRate;
    re += h[n] * Math.cos(turn);
    im += h[n] * Math.sin(turn);
  }
  return { re, im };
}

describe('tapsFor', () => {
  it('is the least power of two of 85 ms, and never below 2048', () => {
    expect([8000, 22050, 32000, 44100, 48000, 88200, 96000].map(tapsFor)).toEqual([
      2048, 2048, 4096, 4096, 4096, 8192, 8192
    ]);
  });

  it('refuses a sample rate that is none', () => {
    expect(() => tapsFor(0)).toThrow('sample rate must be within 3000 … 768000 Hz, got 0');
    expect(() => tapsFor(NaN)).toThrow(RangeError);
  });
});

describe('fftFrequencies', () => {
  it('runs from 0 to half the sample rate', () => {
    const f = fftFrequencies(4096, 48000);
    expect(f.length).toBe(2049);
    expect([f[0], f[1], f[2048]]).toEqual([0, 11.71875, 24000]);
  });
});

describe('impulseResponse', () => {
  for (const sampleRate of [44100, 48000, 96000])
    for (const speaker of ['full', 'ideal'] as const)
      it(`agrees with the response on and between the bins: ${speaker} speaker, ${sampleRate} Hz`, () => {
        const taps = tapsFor(sampleRate);
        // 12 points an octave fall on bins and between them alike; a few stand in the middle of two bins
        const between = [4.5, 7.5, 30.5, 100.5, 1000.5].map((bin) => (bin * sampleRate) / taps);
        const probes = Float64Array.from([...logGrid(50, 12000, 12), ...between].sort((a, b) => a - b));
        for (const [name, installation] of Object.entries(DEMO)) {
          const onBins = ruleOfThumb(installation, AIR, IN_FRONT, fftFrequencies(taps, sampleRate), speaker);
          const h = impulseResponse(onBins);
          expect(h.length).toBe(taps);
          const truth = ruleOfThumb(installation, AIR, IN_FRONT, probes, speaker);
          for (let i = 0; i < probes.length; i++) {
            const got = transformAt(h, probes[i], sampleRate);
            const size = Math.hypot(truth.re[i], truth.im[i]);
            close(20 * Math.log10(Math.hypot(got.re, got.im) / size), 0, {
              abs: 0.05,
              because: `${name}, ${probes[i]} Hz: level in dB; 0.05 dB is below what can be heard`
            });
            close(Math.hypot(got.re - truth.re[i], got.im - truth.im[i]) / size, 0, {
              abs: 0.02,
              because: `${name}, ${probes[i]} Hz: the phase must agree as well, branches are crossfaded`
            });
          }
        }
      });

  it('turns a flat response into one sample, late by the pre-delay', () => {
    const bins = 1025;
    const h = impulseResponse({ re: new Float64Array(bins).fill(1), im: new Float64Array(bins) });
    expect(h.length).toBe(2048);
    h.forEach((x, n) => close(x, n === PRE_DELAY ? 1 : 0, { abs: 1e-7, because: 'single precision' }));
  });

  it('changes its sign with the response, so that turning the magnet round is only a sign', () => {
    const f = fftFrequencies(4096, 48000);
    const h = ruleOfThumb(DEMO['free air'], AIR, IN_FRONT, f);
    const turnedRound = { re: h.re.map((x) => -x), im: h.im.map((x) => -x) };
    const a = impulseResponse(h);
    const b = impulseResponse(turnedRound);
    a.forEach((x, n) => close(b[n], -x, { abs: 1e-7, because: 'single precision' }));
  });

  it('does not listen to the response above 0.45 of the sample rate, and holds its magnitude there', () => {
    const f = fftFrequencies(4096, 48000);
    const h = ruleOfThumb(DEMO['flat plate'], AIR, IN_FRONT, f);
    const spoilt = { re: h.re.map((x, k) => (f[k] > 0.45 * 48000 ? 1e6 : x)), im: h.im };
    expect(impulseResponse(spoilt)).toEqual(impulseResponse(h));
    const edge = Math.floor((0.45 * 48000) / f[1]);
    const held = Math.hypot(h.re[edge], h.im[edge]);
    for (const at of [21700, 22400, 23100]) {
      const got = transformAt(impulseResponse(h), at, 48000);
      close(Math.hypot(got.re, got.im), held, { rel: 1e-3, because: 'the magnitude is held' });
    }
  });

  it('refuses too few bins', () => {
    expect(() => impulseResponse({ re: new Float64Array(33), im: new Float64Array(33) })).toThrow(
      'a response must have more than 65 bins, got 33'
    );
  });
});
