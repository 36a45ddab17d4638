import { describe, expect, it } from 'vitest';
import { bandBars } from '../../../../src/lib/plot/marks/band-bars.js';
import { bandScale } from '../../../../src/lib/plot/scales/band-scale.js';
import { usualRange } from '../../../../src/lib/plot/scales/picture-range.js';
import { close } from '../../../helpers/close.js';

const area = { left: 0, right: 100, top: 0, bottom: 100 };
const band = (outlineDb: number, filledDb: number) => ({ low: 10, high: 20, label: '', outlineDb, filledDb });
const x = (frequency: number) => frequency;
const y = (levelDb: number) => -levelDb;

describe('bandScale', () => {
  it('ends the strongest band a tenth below the top, with the floor 45 dB under it', () => {
    const scale = bandScale([band(-33, -40), band(-20, -60), band(-Infinity, NaN)], area, usualRange);
    close(scale?.(-20) ?? NaN, 10, { abs: 1e-9, because: 'a tenth of 100 pixels' });
    close(scale?.(-65) ?? NaN, 100, { abs: 1e-9, because: 'the floor' });
  });
  it('is the axis itself where that tells real levels', () => {
    const range = { ...usualRange, top: 10, bottom: -40, zeroDb: 64 };
    const scale = bandScale([band(-33, -40), band(-20, -60)], area, range);
    // 44 dB re 20 µPa, 30 of the 50 dB below the top
    close(scale?.(-20) ?? NaN, 60, { abs: 1e-9, because: 'a scale of 2 pixels a decibel' });
  });
  it('does not exist for silence', () => {
    expect(bandScale([band(-Infinity, -Infinity)], area, usualRange)).toBeNull();
    expect(bandScale([], area, usualRange)).toBeNull();
  });
});

describe('bandBars', () => {
  it('stands empty where all is lost, and is not there where there was no sound', () => {
    const scale = bandScale([band(-30, 0)], area, usualRange);
    expect(scale && bandBars([band(-30, -Infinity), band(-Infinity, NaN)], x, scale, area)).toEqual({
      filled: '',
      added: '',
      rims: '',
      outlines: 'M11.5,100V10H18.5V100'
    });
  });
  it('fills as far as the mount lets through and outlines the band as it is', () => {
    expect(bandBars([band(-30, -60)], x, y, area)).toEqual({
      filled: 'M11.5,100V60H18.5V100Z',
      added: '',
      rims: 'M11.5,60H18.5',
      outlines: 'M11.5,100V30H18.5V100'
    });
  });
  it('shows what a mount adds on top of the outline', () => {
    expect(bandBars([band(-30, -20)], x, y, area)).toEqual({
      filled: 'M11.5,100V30H18.5V100Z',
      added: 'M11.5,30V20H18.5V30Z',
      rims: 'M11.5,20H18.5',
      outlines: 'M11.5,100V30H18.5V100'
    });
  });
  it('cuts at the top of the area without a rim and draws nothing below the floor', () => {
    expect(bandBars([band(-30, 50)], x, y, area)).toMatchObject({ added: 'M11.5,30V0H18.5V30Z', rims: '' });
    expect(bandBars([band(-130, -Infinity)], x, y, area)).toEqual({
      filled: '',
      added: '',
      rims: '',
      outlines: ''
    });
  });
  it('cuts a band at the sides of the area and leaves out one beside it', () => {
    const wide = { low: 90, high: 130, label: '', outlineDb: -30, filledDb: -60 };
    expect(bandBars([wide], x, y, area).outlines).toBe('M91.5,100V30H100V100');
    expect(bandBars([{ ...wide, low: 120 }], x, y, area).outlines).toBe('');
  });
});
