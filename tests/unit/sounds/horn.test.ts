import { expect, test } from 'vitest';
import { bandLevels } from '../../../src/lib/listening/band-levels.js';
import { peak } from '../../../src/lib/listening/peak.js';
import { powerSpectrum } from '../../../src/lib/listening/power-spectrum.js';
import { thirdOctaveBands } from '../../../src/lib/numeric/third-octave-bands.js';
import { hornPitches, renderHorn } from '../../../src/lib/sounds/horn.js';
import { close } from '../../helpers/close.js';
import { seam } from '../../helpers/seam.js';

const RATE = 48000;
const horn = renderHorn(RATE);
const { power, binWidth } = powerSpectrum(horn, RATE);

test('each bell stands out of its neighbourhood at its pitch', () => {
  for (const pitch of hornPitches()) {
    const bin = Math.round(pitch / binWidth);
    const near = Math.max(...power.slice(bin - 2, bin + 3));
    const between = Math.min(...power.slice(bin - 8, bin + 9));
    expect(10 * Math.log10(near / between)).toBeGreaterThan(15);
  }
});

test('most of the energy lies in 350 Hz … 4 kHz, and partials and air reach past 8 kHz', () => {
  const bands = bandLevels(power, binWidth, [
    { lower: 0, upper: 24000 },
    { lower: 350, upper: 4000 },
    { lower: 350, upper: 1050 },
    { lower: 8000, upper: 12000 }
  ]);
  expect(bands[1] - bands[0]).toBeGreaterThan(-0.7);
  expect(bands[2] - bands[0]).toBeGreaterThan(-4.5);
  expect(bands[3] - bands[0]).toBeGreaterThan(-45);
  const thirds = bandLevels(power, binWidth, thirdOctaveBands(400, 5000));
  expect(Math.max(...thirds) - Math.min(...thirds)).toBeLessThan(20);
});

test('the loop lasts two to three seconds, peaks at −8 dBFS, and has no seam and no DC', () => {
  expect(horn.length / RATE).toBeGreaterThanOrEqual(2);
  expect(horn.length / RATE).toBeLessThanOrEqual(3);
  close(20 * Math.log10(peak(horn)), -8, { abs: 0.1, because: '0.4 is −7.96 dB' });
  const { step, slope, treble } = seam(horn, RATE);
  expect(Math.max(step, slope, treble)).toBeLessThan(1);
  expect(Math.abs(horn.reduce((a, b) => a + b, 0) / horn.length)).toBeLessThan(1e-4);
});

test.each([8000, 44100, 96000])('it renders at %i Hz without a seam', (rate) => {
  const { step, slope } = seam(renderHorn(rate), rate);
  expect(Math.max(step, slope)).toBeLessThan(1);
});
