import { describe, expect, test } from 'vitest';
import { bandLevels } from '../../../src/lib/listening/band-levels.js';
import { loopLoudness } from '../../../src/lib/listening/loudness.js';
import { peak } from '../../../src/lib/listening/peak.js';
import { powerSpectrum } from '../../../src/lib/listening/power-spectrum.js';
import { thirdOctaveBands } from '../../../src/lib/numeric/third-octave-bands.js';
import { type Engine, PRIME_MOVER } from '../../../src/lib/sounds/engine.js';
import { filter, section } from '../../../src/lib/sounds/blocks/filter.js';
import { renderEngine } from '../../../src/lib/sounds/render-engine.js';
import { close } from '../../helpers/close.js';
import { seam } from '../../helpers/seam.js';

const RATE = 48000;
const BANDS = thirdOctaveBands(25, 16000);
const render = (notch: number, seed = PRIME_MOVER.seed, sampleRate = RATE) =>
  renderEngine({ ...PRIME_MOVER, seed }, notch, sampleRate);

const loops = new Map([0, 2, 4, 6, 8].map((notch) => [notch, render(notch)]));

function roughness(samples: Float32Array): number {
  const { step, slope, treble } = seam(samples, RATE);
  return Math.max(step, slope, treble);
}

/** Power of the envelope of 300 Hz … 3 kHz at a frequency, against the envelope's mean squared. */
function modulation(loop: Float32Array, frequency: number): number {
  const high = filter(loop, section('highPass', 300, 0.7, RATE), { sampleRate: RATE, cyclic: true });
  const envelope = filter(high, section('lowPass', 3000, 0.7, RATE), { sampleRate: RATE, cyclic: true }).map(
    Math.abs
  );
  const periods = Math.round((frequency * loop.length) / RATE);
  let [re, im, mean] = [0, 0, 0];
  envelope.forEach((x, i) => {
    re += x * Math.cos((2 * Math.PI * periods * i) / loop.length);
    im += x * Math.sin((2 * Math.PI * periods * i) / loop.length);
    mean += x;
  });
  return (2 * Math.hypot(re, im)) / mean;
}

test('an engine has energy in every third octave from 100 Hz to 5 kHz, at every notch and for other engines', () => {
  const sounds = [
    ...loops.values(),
    ...[1, 3, 5, 7].map((n) => render(n, n)),
    ...[5, 6, 77].map((s) => render(0, s))
  ];
  for (const samples of sounds) {
    const { power, binWidth } = powerSpectrum(samples, RATE);
    const levels = bandLevels(power, binWidth, BANDS);
    const strongest = Math.max(...levels);
    BANDS.forEach(({ nominal }, i) => {
      if (nominal >= 100 && nominal <= 5000) expect(levels[i] - strongest).toBeGreaterThan(-35);
    });
  }
});

test('the loop is a whole number of patterns, within one sample', () => {
  for (const [notch, samples] of loops) {
    const patterns = ((samples.length / RATE) * (400 + 75 * notch)) / 120;
    close(patterns, Math.round(patterns), { abs: 0.5 / RATE / 0.12, because: 'half a sample of a pattern' });
    expect(samples.length / RATE).toBeGreaterThan(4);
    expect(samples.length / RATE).toBeLessThan(6);
  }
});

test('the seam is no rougher than the rest, and loops cut at other places show that this would be seen', () => {
  for (const samples of loops.values()) expect(roughness(samples)).toBeLessThan(1);
  const cuts = Array.from({ length: 10 }, (_, i) => roughness(loops.get(4)!.slice(0, -1777 * (i + 1))));
  expect(cuts.filter((rough) => rough > 1).length).toBeGreaterThanOrEqual(5);
});

test('there is no DC and every sample is a number within full scale', () => {
  for (const samples of loops.values()) {
    expect(Math.abs(samples.reduce((a, b) => a + b, 0) / samples.length)).toBeLessThan(1e-3);
    expect(samples.every((x) => Math.abs(x) < 0.9)).toBe(true);
  }
});

test('notch 8 peaks near −3 dBFS and every notch is louder than the one below; idle is 10 to 14 LU softer', () => {
  close(20 * Math.log10(peak(loops.get(8)!)), -3, { abs: 1, because: '"about −3 dBFS"' });
  const loudness = [...loops.values()].map((samples) => loopLoudness(samples, RATE));
  for (let i = 1; i < loudness.length; i++) expect(loudness[i]).toBeGreaterThan(loudness[i - 1] + 1);
  expect(loudness[4] - loudness[0]).toBeGreaterThan(10);
  expect(loudness[4] - loudness[0]).toBeLessThan(14);
});

test('every seed keeps to the scale', () => {
  for (const seed of [1, 2]) {
    const full = render(8, seed);
    close(20 * Math.log10(peak(full)), -3, { abs: 1.5, because: 'the crest differs from engine to engine' });
    expect(loopLoudness(full, RATE) - loopLoudness(render(0, seed), RATE)).toBeGreaterThan(10);
  }
});

test('idle lopes with its pattern much more than full load, and one hears the firings in it', () => {
  const idle = loops.get(0)!;
  const full = loops.get(8)!;
  expect(modulation(idle, 10 / 3)).toBeGreaterThan(0.2);
  expect(modulation(idle, 40)).toBeGreaterThan(0.1);
  expect(modulation(full, 25 / 3)).toBeLessThan(0.5 * modulation(idle, 10 / 3));
});

test('no two patterns are the same', () => {
  const idle = loops.get(0)!;
  const pattern = Math.round(0.3 * RATE);
  let [same, whole] = [0, 0];
  for (let i = 0; i < idle.length - pattern; i++) {
    same += (idle[i] - idle[i + pattern]) ** 2;
    whole += 2 * idle[i] ** 2;
  }
  expect(same / whole).toBeGreaterThan(0.1);
});

test('the same engine comes out the same twice, another seed differently', () => {
  expect(render(3, 41, 8000)).toEqual(render(3, 41, 8000));
  expect(render(3, 42, 8000)).not.toEqual(render(3, 41, 8000));
});

describe('other rates and engines', () => {
  test.each([8000, 11025, 44100, 96000])('at %i Hz the sound keeps its bands and its level', (rate) => {
    const samples = render(4, 41, rate);
    const usual = powerSpectrum(loops.get(4)!, RATE);
    const here = powerSpectrum(samples, rate);
    const bands = thirdOctaveBands(250, 2000);
    const expected = bandLevels(usual.power, usual.binWidth, bands);
    bandLevels(here.power, here.binWidth, bands).forEach((level, i) => {
      close(level, expected[i], {
        abs: 2,
        because: 'sections bend near half the rate, which moves the whole level'
      });
    });
    const { step, slope } = seam(samples, rate);
    expect(Math.max(step, slope)).toBeLessThan(1);
  });

  test.each<Partial<Engine>>([
    { cylinders: 16, cycle: 'two-stroke', idleRpm: 315, fullRpm: 904 },
    { cylinders: 6, idleRpm: 450, fullRpm: 1050 },
    { cylinders: 1, idleRpm: 300, fullRpm: 600 }
  ])('an engine of $cylinders cylinders has every band too', (change) => {
    for (const notch of [0, 8]) {
      const samples = renderEngine({ ...PRIME_MOVER, ...change }, notch, RATE);
      const { power, binWidth } = powerSpectrum(samples, RATE);
      const levels = bandLevels(power, binWidth, BANDS);
      const least = Math.min(...levels.slice(6, 24));
      expect(least - Math.max(...levels)).toBeGreaterThan(-35);
      expect(peak(samples)).toBeLessThan(0.9);
    }
  });

  test('rates and notches out of range are refused', () => {
    expect(() => render(9)).toThrow('notch must be within 0 … 8, got 9');
    expect(() => render(0, 1, 4000)).toThrow('sample rate must be within 8000 … 192000 Hz, got 4000');
  });
});
