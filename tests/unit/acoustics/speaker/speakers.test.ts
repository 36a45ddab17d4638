import { describe, expect, it } from 'vitest';
import { checkSpeaker } from '../../../../src/lib/acoustics/mounts/check-installation.js';
import { motorFigures } from '../../../../src/lib/acoustics/speaker/motor-figures.js';
import { outlineArea, outlineLength, outlineWidth } from '../../../../src/lib/acoustics/outline.js';
import { defaultBodyVolume, defaultDepth, SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { close } from '../../../helpers/close.js';
import { AIR } from '../../../helpers/demo-installations.js';

/** The figures these invented speakers were made for: fs Hz, Sd cm², Qts, Vas cm³, as rounded there. */
const MEANT: Record<string, [fs: number, sd: number, qts: number, vas: number, vasStep: number]> = {
  oval: [350, 6.0, 1.59, 19, 1],
  'oval-20x40': [420, 4.8, 1.73, 11, 1],
  'oval-16x35': [520, 3.3, 1.79, 5.8, 0.1],
  'phone-11x15': [471, 0.8, 0.98, 1.9, 0.1],
  'phone-13x18': [424, 1.2, 1.15, 2.1, 0.1],
  'round-23': [660, 2.8, 1.69, 5.0, 0.1],
  'round-28': [520, 4.5, 1.82, 10, 1],
  'round-36': [400, 7.5, 1.82, 25, 1],
  'round-50': [220, 13, 1.34, 90, 1]
};

describe('SPEAKERS', () => {
  it('are the nine meant ones', () => {
    expect(Object.keys(SPEAKERS)).toEqual(Object.keys(MEANT));
  });

  for (const [key, [fs, sd, qts, vas, vasStep]] of Object.entries(MEANT))
    it(`${key} has the figures it was made for`, () => {
      const speaker = SPEAKERS[key];
      const figures = motorFigures(speaker.motor, outlineArea(speaker.cone), AIR);
      close(figures.sd * 1e4, sd, { rel: 0.01, because: 'Sd is the area of the cone' });
      close(figures.fs, fs, { rel: 0.02, because: 'fs' });
      close(figures.qts, qts, { rel: 0.02, because: 'Qts' });
      close(figures.vas * 1e6, vas, { rel: 0.02, abs: vasStep / 2, because: 'Vas, or half its last digit' });
    });

  it('are accepted, and lie along: length at least width', () => {
    for (const speaker of Object.values(SPEAKERS)) {
      checkSpeaker(speaker);
      expect(outlineLength(speaker.frame)).toBeGreaterThanOrEqual(outlineWidth(speaker.frame));
      expect(outlineLength(speaker.cone)).toBeGreaterThanOrEqual(outlineWidth(speaker.cone));
    }
  });

  it('carry the size of their frame in their name', () => {
    for (const { name, frame } of Object.values(SPEAKERS)) {
      const [length, width] = [outlineLength(frame), outlineWidth(frame)].map(
        (x) => Math.round(x * 1e4) / 10
      );
      expect(name).toBe(frame.shape === 'round' ? `ø ${length} mm` : `${width} × ${length} mm`);
    }
  });

  it('the oval is 40 × 28 × 12 mm with a body of half its envelope', () => {
    expect(SPEAKERS.oval).toEqual({
      name: '28 × 40 mm',
      frame: { shape: 'rectangle', length: 0.04, width: 0.028 },
      depth: 0.012,
      cone: { shape: 'ellipse', length: 0.034, width: 0.0225 },
      motor: { mms: 0.00055, cms: 0.00038, bl: 1.6, re: 7.2, qms: 3, xmax: 0.0008, ratedPower: 2 },
      bodyVolume: 0.5 * 0.04 * 0.028 * 0.012
    });
  });
});

describe('what is taken when nothing is given', () => {
  it('a depth of 0.4 of the shorter side', () => {
    close(defaultDepth({ shape: 'rectangle', length: 0.04, width: 0.02 }), 0.008, {
      rel: 1e-12,
      because: '0.4 × 20'
    });
    close(defaultDepth({ shape: 'round', diameter: 0.05 }), 0.02, { rel: 1e-12, because: '0.4 × 50' });
  });

  it('a body of half of frame times depth', () => {
    const frame = { shape: 'rectangle', length: 0.04, width: 0.028 } as const;
    close(defaultBodyVolume(frame, 0.012), 6.72e-6, { rel: 1e-12, because: '13.44 cm³ / 2' });
  });
});
