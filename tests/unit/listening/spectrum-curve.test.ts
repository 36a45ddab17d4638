import { describe, expect, it } from 'vitest';
import { spectrumCurve } from '../../../src/lib/listening/spectrum-curve.js';
import { random } from '../../../src/lib/sounds/blocks/random.js';
import { close } from '../../helpers/close.js';

const BIN = 48000 / 8192;
const { uniform } = random(21);
const noise = Float64Array.from({ length: 4097 }, () => 1e-9 * (0.5 + uniform()));

describe('spectrumCurve', () => {
  const lines = [17, 34, 51, 1000, 1007, 2400];
  const power = noise.map((level, k) => (lines.includes(k) ? 1e-3 / k : level));
  const { frequency, levelDb } = spectrumCurve(power, BIN, 20, 16000, 600);

  it('has no more than the points asked for and one at either end, ascending, and covers the range', () => {
    expect(frequency.length).toBeLessThanOrEqual(602);
    expect(frequency.length).toBeGreaterThan(300);
    expect(levelDb).toHaveLength(frequency.length);
    frequency.forEach((each, i) => expect(each).toBeGreaterThan(i ? frequency[i - 1] : 0));
    expect([frequency[0], frequency.at(-1)]).toEqual([3 * BIN, Math.ceil(16000 / BIN) * BIN]);
  });

  it('keeps every line at its own frequency and level, the strongest at 0 dB', () => {
    for (const k of lines) {
      const i = frequency.indexOf(k * BIN);
      expect(i, `line in bin ${k}`).toBeGreaterThanOrEqual(0);
      close(levelDb[i], 10 * Math.log10(17 / k), { abs: 1e-9, because: 'power goes as 1/k' });
    }
    expect(Math.max(...levelDb)).toBe(0);
  });

  it('gives the strongest of each step: no bin of the range stands above the curve about it', () => {
    const ratio = (16000 / 20) ** (1 / 600);
    for (let k = 4; k * BIN <= 16000; k++) {
      const near = [...frequency.keys()].filter(
        (i) => frequency[i] < k * BIN * ratio && frequency[i] > (k * BIN) / ratio
      );
      const highest = Math.max(...near.map((i) => levelDb[i]));
      expect(highest).toBeGreaterThanOrEqual(10 * Math.log10(power[k] / (1e-3 / 17)) - 1e-9);
    }
  });

  it('is each bin by itself where the bins stand wider than the steps', () => {
    expect([...frequency.slice(0, 20)]).toEqual(Array.from({ length: 20 }, (_, i) => (i + 3) * BIN));
  });

  it('puts what is let through on the scale of the sound itself', () => {
    const weight = power.map((_, k) => (k < 500 ? 1e-4 : 2));
    const through = spectrumCurve(power, BIN, 20, 16000, 600, weight);
    const at = (k: number) => through.levelDb[through.frequency.indexOf(k * BIN)];
    close(at(17), -40, { abs: 1e-9, because: 'a ten-thousandth of the power' });
    close(at(1000), 10 * Math.log10((2 * 17) / 1000), { abs: 1e-9, because: 'twice the power' });
  });

  it('leaves the bin at 0 Hz out and takes one step for a range between two bins', () => {
    expect([...spectrumCurve(power, BIN, BIN / 4, BIN / 2, 10).frequency]).toEqual([BIN]);
    expect([...spectrumCurve(power, BIN, 1.01 * BIN, 1.99 * BIN, 10).frequency]).toEqual([BIN, 2 * BIN]);
  });

  it('is −∞ without power and empty where the spectrum ends below the range', () => {
    const silent = spectrumCurve(new Float64Array(4097), BIN, 20, 16000, 50);
    expect(silent.levelDb.length).toBeGreaterThan(0);
    expect(silent.levelDb.every((level) => level === -Infinity)).toBe(true);
    expect(spectrumCurve(power.subarray(0, 3), BIN, 20, 100, 10).frequency).toHaveLength(0);
    expect(spectrumCurve(new Float64Array(0), BIN, 20, 16000, 10).frequency).toHaveLength(0);
  });

  it('refuses an empty range, no points and a weight that does not fit', () => {
    expect(() => spectrumCurve(power, BIN, 0, 100, 10)).toThrow(
      'frequency range must rise from above 0 Hz, got 0 … 100 Hz'
    );
    expect(() => spectrumCurve(power, BIN, 100, 100, 10)).toThrow('must rise');
    expect(() => spectrumCurve(power, BIN, 20, 100, 0)).toThrow(
      'points must be a whole number of at least 1, got 0'
    );
    expect(() => spectrumCurve(power, BIN, 20, 100, 10, new Float64Array(3))).toThrow(
      'weight must have 4097 bins, got 3'
    );
  });
});
