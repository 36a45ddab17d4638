import { describe, expect, it } from 'vitest';
import type { ResponseBand, ResponseCurve } from '../../../../src/lib/plot/response-curve.js';
import { bandAt, levelAt, lossText, readout, readoutText } from '../../../../src/lib/plot/readout/readout.js';
import { close } from '../../../helpers/close.js';

const frequency = Float64Array.of(100, 1000, 10000);
const curve = (id: number, name: string, levels: number[], heard: boolean): ResponseCurve => ({
  id,
  numeral: `${id}`,
  name,
  frequency,
  levelDb: Float64Array.from(levels),
  style: 1,
  heard
});
const band = (low: number, high: number, outlineDb: number, filledDb: number): ResponseBand => ({
  low,
  high,
  label: '',
  outlineDb,
  filledDb
});

describe('levelAt', () => {
  const levels = Float64Array.of(-30, -10, 0);
  it('interpolates on log frequency', () => {
    const halfway = Math.sqrt(100 * 1000);
    close(levelAt(frequency, levels, halfway), -20, {
      abs: 1e-12,
      because: 'half a decade of 20 dB a decade'
    });
    close(levelAt(frequency, levels, 2000), -10 + 10 * Math.log10(2), {
      abs: 1e-12,
      because: '10 dB a decade'
    });
  });
  it('gives the very values on the grid', () => {
    frequency.forEach((f, i) => close(levelAt(frequency, levels, f), levels[i], { because: 'a grid point' }));
  });
  it('does not extrapolate', () => {
    expect(levelAt(frequency, levels, 99.9)).toBeNaN();
    expect(levelAt(frequency, levels, 10001)).toBeNaN();
    expect(levelAt(frequency, levels, NaN)).toBeNaN();
    expect(levelAt(new Float64Array(0), new Float64Array(0), 100)).toBeNaN();
  });
  it('keeps a gap a gap, but not the points beside it', () => {
    const gap = Float64Array.of(-30, NaN, 0);
    expect(levelAt(frequency, gap, 500)).toBeNaN();
    expect(levelAt(frequency, gap, 1000)).toBeNaN();
    close(levelAt(frequency, gap, 10000), 0, { because: 'a grid point' });
  });
  it('is silent beside silence', () => {
    expect(levelAt(frequency, Float64Array.of(-Infinity, 0, 0), 999)).toBe(-Infinity);
  });
});

describe('bandAt', () => {
  const bands = [band(90, 112, -3, -20), band(112, 141, -5, -20)];
  it('finds the band, the upper one at a shared edge, none outside', () => {
    expect(bandAt(bands, 100)).toBe(bands[0]);
    expect(bandAt(bands, 112)).toBe(bands[1]);
    expect(bandAt(bands, 150)).toBeNull();
    expect(bandAt(null, 100)).toBeNull();
  });
});

describe('lossText', () => {
  it.each([
    [-10, -24, '14 dB lost'],
    [-10, -7, '3 dB gained'],
    [-10, -10.4, 'nothing lost'],
    [-10, -Infinity, 'all lost'],
    [-Infinity, -Infinity, null],
    [-10, NaN, null]
  ])('says of %d dB that became %d dB: %s', (outlineDb, filledDb, words) => {
    expect(lossText({ outlineDb, filledDb })).toBe(words);
  });
});

describe('readoutText', () => {
  const curves = [curve(1, 'free air', [-60, -21, 0], false), curve(2, 'flat plate', [-40, -5, 0], true)];
  it('names the heard curve first', () => {
    expect(readoutText(readout(curves, 1000), null, 1000, 'the engine')).toBe(
      '1.0 kHz: flat plate −5 dB, heard; free air −21 dB'
    );
  });
  it('ends with what becomes of the band', () => {
    expect(readoutText(readout(curves, 1000), band(900, 1100, -3, -17), 1000, 'the engine')).toMatch(
      /; this band of the engine: 14 dB lost$/
    );
  });
});
