import { describe, expect, test } from 'vitest';
import { checkKnobs, type SoundKnobs, usualValues } from '../../../../src/lib/sounds/knob.js';
import type { StillSource } from '../../../../src/lib/sounds/sound-kind.js';
import { BURSTS_SOURCE, BURSTS_PRESETS } from '../../../../src/lib/sounds/test-signals/bursts.js';
import { PINK_NOISE_SOURCE, PINK_NOISE_PRESETS } from '../../../../src/lib/sounds/test-signals/pink-noise.js';
import { PUFF_SOURCE, PUFF_PRESETS } from '../../../../src/lib/sounds/test-signals/puff.js';
import {
  STEPPED_TONES_SOURCE,
  STEPPED_TONES_PRESETS
} from '../../../../src/lib/sounds/test-signals/stepped-tones.js';
import { SWEEP_SOURCE, SWEEP_PRESETS } from '../../../../src/lib/sounds/test-signals/sweep.js';
import {
  WHITE_NOISE_SOURCE,
  WHITE_NOISE_PRESETS
} from '../../../../src/lib/sounds/test-signals/white-noise.js';
import { knobEnds } from '../signals/knob-ends.js';

function signal<S extends { kind: string; name: string }>(kind: StillSource<S>, presets: readonly S[]) {
  return {
    name: presets[0].kind,
    knobs: kind.knobs,
    presets,
    ends: knobEnds(kind.knobs, presets[0]).map(({ what, sound }) => ({
      what,
      render: () => kind.render(sound, 48000)
    })),
    render: (rate: number, preset = 0) => kind.render(presets[preset], rate),
    broken: (change: object, rate = 48000) => kind.render({ ...presets[0], ...change }, rate),
    marks: () => presets.flatMap((preset) => kind.marks(preset))
  };
}

const SIGNALS = [
  signal(PINK_NOISE_SOURCE, PINK_NOISE_PRESETS),
  signal(WHITE_NOISE_SOURCE, WHITE_NOISE_PRESETS),
  signal(SWEEP_SOURCE, SWEEP_PRESETS),
  signal(STEPPED_TONES_SOURCE, STEPPED_TONES_PRESETS),
  signal(BURSTS_SOURCE, BURSTS_PRESETS),
  signal(PUFF_SOURCE, PUFF_PRESETS)
];

describe.each(SIGNALS)('$name', ({ name, knobs, presets, ends, render, broken, marks }) => {
  test('the usual values and the presets are within the knobs', () => {
    checkKnobs(knobs, usualValues(knobs as SoundKnobs));
    presets.forEach((preset) => {
      checkKnobs(knobs, preset);
      expect(preset.kind).toBe(name);
      expect(Object.keys(preset).sort()).toEqual(['kind', 'name', ...Object.keys(knobs)].sort());
    });
  });

  test.each([8000, 44100, 48000, 96000])(
    'at %i Hz every preset is finite, within full scale, at most 15 s',
    (rate) => {
      presets.forEach((_, preset) => {
        const loop = render(rate, preset);
        expect(loop.length / rate).toBeLessThanOrEqual(15);
        const peak = loop.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
        expect(peak > 0.3 && peak <= 1).toBe(true);
        expect(Number.isFinite(loop.reduce((sum, x) => sum + x, 0))).toBe(true);
      });
    }
  );

  test('every knob at both ends makes finite sound of at most a minute, and no silence', () => {
    for (const { what, render } of ends) {
      const loop = render();
      expect(loop.length / 48000, what).toBeLessThanOrEqual(60);
      const power = loop.reduce((sum, x) => sum + x * x, 0);
      expect(power > 0 && power < loop.length, `${what}: ${power}`).toBe(true);
    }
  });

  test('the same settings give the same samples', () => {
    const again = render(16000);
    expect(render(16000).every((x, i) => x === again[i])).toBe(true);
  });

  test('marks lie within hearing', () => {
    for (const { frequency, name } of marks()) expect(frequency > 19 && frequency < 20001, name).toBe(true);
  });

  test('what lies out of range is refused', () => {
    const [[key, knob]] = Object.entries<SoundKnobs[string]>(knobs);
    expect(() => broken({ [key]: -1 })).toThrow(RangeError);
    expect(() => broken({ [key]: -1 })).toThrow(`${knob.name} must be`);
    expect(() => broken({}, NaN)).toThrow('sample rate must be within 8000 … 192000 Hz, got NaN');
  });
});

describe('loops that begin and end in silence', () => {
  // Puffs and bursts are made of silence for the most part, so that a seam cannot be compared with other places.
  test.each([
    ['sweep', SWEEP_SOURCE.render(SWEEP_PRESETS[0], 48000)],
    ['steppedTones', STEPPED_TONES_SOURCE.render(STEPPED_TONES_PRESETS[0], 48000)],
    ['bursts', BURSTS_SOURCE.render(BURSTS_PRESETS[0], 48000)],
    ['puff', PUFF_SOURCE.render(PUFF_PRESETS[0], 48000)]
  ])('%s', (_, loop) => {
    const end = loop.subarray(loop.length - Math.round(0.04 * 48000));
    expect(end.every((x) => x === 0)).toBe(true);
    expect(Math.abs(loop[0])).toBe(0);
    expect(Math.abs(loop[1])).toBeLessThan(1e-4);
  });
});

test('white noise has the RMS of pink noise and loops without a seam', () => {
  const loop = WHITE_NOISE_SOURCE.render(WHITE_NOISE_PRESETS[0], 8000);
  const rms = Math.sqrt(loop.reduce((sum, x) => sum + x * x, 0) / loop.length);
  expect(Math.abs(rms - 0.1)).toBeLessThan(1e-5);
});

test('tones above 0.45 of the sample rate are left out, and nothing at all is one silent step', () => {
  const tones = { ...STEPPED_TONES_PRESETS[0], from: 3150, to: 20000, seconds: 0.2 };
  expect(STEPPED_TONES_SOURCE.render(tones, 8000)).toHaveLength(0.25 * 8000);
  expect(STEPPED_TONES_SOURCE.render({ ...tones, from: 2500 }, 8000)).toHaveLength(2 * 0.25 * 8000);
  const silent = STEPPED_TONES_SOURCE.render({ ...tones, from: 5000 }, 8000);
  expect(silent).toHaveLength(0.25 * 8000);
  expect(silent.every((x) => x === 0)).toBe(true);
});

test('tones downward are those upward in reverse order', () => {
  const up = STEPPED_TONES_SOURCE.marks({ ...STEPPED_TONES_PRESETS[0], from: 100, to: 500 });
  const down = STEPPED_TONES_SOURCE.marks({ ...STEPPED_TONES_PRESETS[0], from: 500, to: 100 });
  expect(up.map(({ name }) => name)).toEqual([
    '100 Hz',
    '125 Hz',
    '160 Hz',
    '200 Hz',
    '250 Hz',
    '315 Hz',
    '400 Hz',
    '500 Hz'
  ]);
  expect(down).toEqual([...up].reverse());
});

test('a sweep is silent where it passes what the sample rate holds', () => {
  const loop = SWEEP_SOURCE.render({ kind: 'sweep', name: '', from: 500, to: 16000, seconds: 2 }, 8000);
  // 500·32^(t/2) reaches 3600 Hz at 2·ln 7.2/ln 32 = 1.139 s.
  expect(loop.subarray(1.14 * 8000).every((x) => x === 0)).toBe(true);
  expect(loop.subarray(1 * 8000, 1.1 * 8000).some((x) => Math.abs(x) > 0.4)).toBe(true);
});

test('a sweep from a frequency to itself is a tone', () => {
  const loop = SWEEP_SOURCE.render({ kind: 'sweep', name: '', from: 440, to: 440, seconds: 1 }, 8000);
  for (let i = 400; i < 7600; i += 53)
    expect(Math.abs(loop[i] - 0.5 * Math.sin((2 * Math.PI * 440 * i) / 8000))).toBeLessThan(1e-6);
});

test('at a low sample rate a puff is held 60 dB down at half of it', () => {
  const loop = PUFF_SOURCE.render({ kind: 'puff', name: '', upper: 12000, pause: 0.25 }, 8000);
  const size = (alternating: boolean) =>
    Math.abs(loop.subarray(0, 2000).reduce((sum, x, i) => sum + (alternating && i % 2 ? -x : x), 0));
  // The line at half the rate holds the two sides of the spectrum: 6 dB more.
  expect(20 * Math.log10(size(true) / size(false))).toBeLessThan(-53.9);
  expect(20 * Math.log10(size(true) / size(false))).toBeGreaterThan(-54.1);
});
