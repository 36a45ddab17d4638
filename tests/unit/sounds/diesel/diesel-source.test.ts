import { describe, expect, test } from 'vitest';
import { bandLevels } from '../../../../src/lib/listening/band-levels.js';
import { loopLoudness } from '../../../../src/lib/listening/loudness.js';
import { peak } from '../../../../src/lib/listening/peak.js';
import { powerSpectrum } from '../../../../src/lib/listening/power-spectrum.js';
import { thirdOctaveBands } from '../../../../src/lib/numeric/third-octave-bands.js';
import { filter, section } from '../../../../src/lib/sounds/blocks/filter.js';
import { type Diesel, dieselRpm, patternRate } from '../../../../src/lib/sounds/diesel/diesel.js';
import { DIESEL_SOURCE } from '../../../../src/lib/sounds/diesel/diesel-source.js';
import { DIESEL_PRESETS } from '../../../../src/lib/sounds/diesel/diesel-presets.js';
import { renderLoop } from '../../../../src/lib/sounds/motion/ride.js';
import { rms } from '../../../helpers/levels.js';
import { close } from '../../../helpers/close.js';
import { lineOf } from './steady.js';

const RATE = 16000;
const NOTCHES = [0, 1, 2, 3, 4, 5, 6, 7, 8];
const [CAB] = DIESEL_PRESETS;
const render = (change: Partial<Diesel>, rate = RATE) =>
  renderLoop(DIESEL_SOURCE, { ...CAB, ...change }, rate);

const loops = new Map(
  DIESEL_PRESETS.map((preset) => [preset, NOTCHES.map((notch) => render({ ...preset, notch }))] as const)
);
const each = [...loops].map(([preset, sounds]) => [preset.name, preset, sounds] as const);

const mean = (samples: Float32Array) => samples.reduce((sum, x) => sum + x, 0) / samples.length;

/** Levels of the third octaves against the strongest of those from 25 Hz up. */
function thirds(samples: Float32Array, rate: number, to: number): { nominal: number; level: number }[] {
  const { power, binWidth } = powerSpectrum(samples, rate);
  const bands = thirdOctaveBands(25, to);
  const levels = bandLevels(power, binWidth, bands);
  return bands.map(({ nominal }, i) => ({ nominal, level: levels[i] - Math.max(...levels) }));
}

/** Where most of the exhaust is, and where most of the rest is. */
const LOWS = [40, 300];
const MIDDLE = [300, 3000];

/** Swing of the envelope of a range of frequencies at a frequency, against the envelope's mean. */
function swing(loop: Float32Array, frequency: number, [low, high]: number[]): number {
  const span = { sampleRate: RATE, cyclic: true };
  const above = filter(loop, section('highPass', low, 0.7, RATE), span);
  const envelope = filter(above, section('lowPass', high, 0.7, RATE), span).map(Math.abs);
  return lineOf(envelope, Math.round((frequency * loop.length) / RATE)) / mean(envelope);
}

describe.each(each)('%s', (_, preset, sounds) => {
  test('every notch is louder than the one below by 0.5 to 3 LU; idle is 5 to 9 LU below notch 4, full 4 to 7 above', () => {
    const loudness = sounds.map((samples) => loopLoudness(samples, RATE));
    for (let i = 1; i < loudness.length; i++) {
      expect(loudness[i] - loudness[i - 1], `notch ${i}`).toBeGreaterThan(0.5);
      expect(loudness[i] - loudness[i - 1], `notch ${i}`).toBeLessThan(3);
    }
    expect(loudness[0] - loudness[4]).toBeGreaterThan(-9);
    expect(loudness[0] - loudness[4]).toBeLessThan(-5);
    expect(loudness[8] - loudness[4]).toBeGreaterThan(4);
    expect(loudness[8] - loudness[4]).toBeLessThan(7);
  });

  test('peaks stand 9 to 16 dB above the RMS at full, at most 20 dB where single pulses are heard, and there is no DC', () => {
    for (const [notch, samples] of sounds.entries()) {
      const crest = 20 * Math.log10(peak(samples) / rms(samples));
      expect(crest).toBeGreaterThan(9);
      expect(crest).toBeLessThan(notch < 8 ? 20 : 16);
      expect(Math.abs(mean(samples))).toBeLessThan(1e-4 * rms(samples) + 1e-9);
    }
  });

  test('the loop is a whole number of patterns, within half a sample', () => {
    for (const [notch, samples] of sounds.entries()) {
      const rate = patternRate(preset, dieselRpm({ ...preset, notch }));
      const patterns = (samples.length / RATE) * rate;
      close(patterns, Math.round(patterns), { abs: (0.51 / RATE) * rate, because: 'half a sample' });
    }
  });

  test('there is energy in every third octave from 100 Hz to 5 kHz, within 35 dB of the strongest', () => {
    for (const samples of sounds)
      for (const { nominal, level } of thirds(samples, RATE, 5000))
        if (nominal >= 100) expect(level, `${nominal} Hz`).toBeGreaterThan(-35);
  });

  test('what comes and goes does so with the pattern and the firings, and idle lopes', () => {
    const pattern = (notch: number) => patternRate(preset, dieselRpm({ ...preset, notch }));
    const swings = (notch: number, first: number, last: number, range: number[]) => {
      let power = 0;
      for (let n = first; n <= last; n++) power += swing(sounds[notch], n * pattern(notch), range) ** 2;
      return power;
    };
    const { cylinders } = preset;
    for (const notch of [0, 8])
      expect(swings(notch, 1, cylinders, MIDDLE)).toBeGreaterThan(
        3 * swings(notch, 1.5, cylinders - 0.5, MIDDLE)
      );
    const lope = (notch: number) => swings(notch, 1, 3, LOWS) + swings(notch, 1, 3, MIDDLE);
    expect(lope(0)).toBeGreaterThan(1.3 * lope(8));
  });
});

test.each(DIESEL_PRESETS.map((preset) => [preset.name, preset] as const))(
  '%s: at 48 kHz it falls by 6 to 9 dB an octave in density above 1 kHz, and reaches 12.5 kHz',
  (_, preset) => {
    for (const notch of [0, 8]) {
      const bands = thirds(render({ ...preset, notch }, 48000), 48000, 12500);
      const at = (nominal: number) => bands.find((band) => band.nominal === nominal)!.level;
      // Third octaves of an even density rise by 3 dB an octave.
      const fall = 3 + (at(1000) + at(1250) - at(6300) - at(8000)) / 2 / Math.log2(6.3);
      expect(fall).toBeGreaterThan(6);
      expect(fall).toBeLessThan(9);
      expect(at(12500)).toBeGreaterThan(-38);
    }
  }
);

test('the same engine comes out the same twice, another seed differently', () => {
  const once = render({ notch: 3 }, 8000);
  expect(render({ notch: 3 }, 8000)).toEqual(once);
  expect(render({ notch: 3, seed: 42 }, 8000)).not.toEqual(once);
});

test('no two patterns are the same', () => {
  const idle = loops.get(CAB)![0];
  const pattern = Math.round(0.3 * RATE);
  let [apart, whole] = [0, 0];
  for (let i = 0; i < idle.length - pattern; i++) {
    apart += (idle[i] - idle[i + pattern]) ** 2;
    whole += 2 * idle[i] ** 2;
  }
  expect(apart / whole).toBeGreaterThan(0.1);
});

test('every knob is heard', () => {
  const usual = render({ notch: 3 }, 8000);
  for (const change of [
    { load: 0.2 },
    { cylinders: 8 },
    { layout: 'in-line' },
    { cycle: 'two-stroke' },
    { charging: 'none' },
    { charging: 'blower' },
    { idleRpm: 300 },
    { fullRpm: 1200 },
    { unevenness: 0 },
    { silencer: 1 },
    { clatter: 0 },
    { fans: 0 },
    { hum: 0 }
  ] as Partial<Diesel>[])
    expect(render({ notch: 3, ...change }, 8000), JSON.stringify(change)).not.toEqual(usual);
});

test('the load alone makes it louder, and a silencer softer and duller', () => {
  const loudness = (change: Partial<Diesel>) => loopLoudness(render({ notch: 5, ...change }), RATE);
  expect(loudness({ load: 1 }) - loudness({ load: 0.1 })).toBeGreaterThan(3);
  expect(loudness({ silencer: 0 }) - loudness({ silencer: 1 })).toBeGreaterThan(2);
  const held = (nominal: number) => {
    const levels = [0, 1].map((silencer) => {
      const { power, binWidth } = powerSpectrum(
        render({ notch: 5, silencer, clatter: 0, fans: 0, charging: 'none' }),
        RATE
      );
      return bandLevels(power, binWidth, thirdOctaveBands(nominal, nominal))[0];
    });
    return levels[0] - levels[1];
  };
  expect(held(2000)).toBeGreaterThan(held(100) + 1);
});

describe('other rates and engines', () => {
  test.each([11025, 44100, 96000])('at %i Hz the sound keeps its bands and its level', (rate) => {
    const bands = thirdOctaveBands(250, 2000);
    const levels = (samples: Float32Array, sampleRate: number) => {
      const { power, binWidth } = powerSpectrum(samples, sampleRate);
      return bandLevels(power, binWidth, bands);
    };
    const expected = levels(render({ notch: 4 }, 48000), 48000);
    levels(render({ notch: 4 }, rate), rate).forEach((level, i) => {
      close(level, expected[i], {
        abs: 2,
        because: 'the noise is another one, and sections bend near half the rate'
      });
    });
  });

  test.each<Partial<Diesel>>([
    { cylinders: 1, layout: 'in-line', idleRpm: 200, fullRpm: 400 },
    { cylinders: 1, layout: 'vee', cycle: 'two-stroke', idleRpm: 1200, fullRpm: 2500 },
    { cylinders: 20, cycle: 'two-stroke', idleRpm: 200, fullRpm: 2500, load: 1, unevenness: 1, clatter: 1 },
    { cylinders: 20, load: 0, unevenness: 0, clatter: 0, fans: 0, hum: 0, silencer: 1, charging: 'none' },
    { idleRpm: 700, fullRpm: 700, seed: 0 }
  ])('an engine at the ends of its knobs is sound: %o', (change) => {
    for (const rate of [8000, 96000])
      for (const notch of rate === 8000 ? [0, 2.5, 8] : [8]) {
        const samples = render({ ...change, notch }, rate);
        expect(samples.every(Number.isFinite)).toBe(true);
        expect(rms(samples)).toBeGreaterThan(1e-4);
        expect(rms(samples)).toBeLessThan(3);
      }
  });

  test('what cannot be is refused', () => {
    expect(() => render({ notch: 9 })).toThrow('notch must be within 0 … 8, got 9');
    expect(() => render({ notch: 0 }, 4000)).toThrow('sample rate must be within 8000 … 192000 Hz, got 4000');
    expect(() => render({ idleRpm: 900, fullRpm: 600 })).toThrow(RangeError);
    expect(() => DIESEL_SOURCE.target({ ...CAB, idleRpm: 900, fullRpm: 600 })).toThrow(
      'full speed must be at least the idle speed of 900 rpm, got 600'
    );
  });
});

test('it marks the firings, and each round of all cylinders', () => {
  // Twelve cylinders, four-stroke, 980 rpm: 98 firings a second.
  expect(DIESEL_SOURCE.marks({ ...CAB, notch: 8 })).toEqual([
    { frequency: 98, name: 'firing rate', harmonics: 8 },
    { frequency: 980 / 120, name: 'all cylinders once', harmonics: 1 }
  ]);
});
