import { describe, expect, test } from 'vitest';
import { checkKnobs, type SoundKnobs, usualValues } from '../../../../src/lib/sounds/knob.js';
import { BELL_PRESETS } from '../../../../src/lib/sounds/signals/bell.js';
import { BELL_SOURCE } from '../../../../src/lib/sounds/signals/bell-source.js';
import { COMPRESSOR_PRESETS } from '../../../../src/lib/sounds/signals/compressor.js';
import { COMPRESSOR_SOURCE } from '../../../../src/lib/sounds/signals/compressor-source.js';
import { CROSSING_PRESETS } from '../../../../src/lib/sounds/signals/crossing.js';
import { CROSSING_SOURCE } from '../../../../src/lib/sounds/signals/crossing-source.js';
import { HORN_PRESETS } from '../../../../src/lib/sounds/signals/horn.js';
import { HORN_SOURCE } from '../../../../src/lib/sounds/signals/horn-source.js';
import { SLACK_PRESETS } from '../../../../src/lib/sounds/signals/slack.js';
import { SLACK_SOURCE } from '../../../../src/lib/sounds/signals/slack-source.js';
import { SQUEAL_PRESETS } from '../../../../src/lib/sounds/signals/squeal.js';
import { SQUEAL_SOURCE } from '../../../../src/lib/sounds/signals/squeal-source.js';
import type { StillSource } from '../../../../src/lib/sounds/sound-kind.js';
import { seam } from '../../../helpers/seam.js';
import { knobEnds } from './knob-ends.js';

interface Seeded {
  kind: string;
  name: string;
  seed: number;
}

function signal<S extends Seeded>(kind: StillSource<S>, presets: readonly S[]) {
  return {
    name: presets[0].kind,
    knobs: kind.knobs,
    presets,
    ends: knobEnds(kind.knobs, presets[0]).map(({ what, sound }) => ({
      what,
      render: () => kind.render(sound, 8000)
    })),
    render: (rate: number, preset = 0, change: Partial<Seeded> = {}) =>
      kind.render({ ...presets[preset], ...change }, rate),
    marks: () => presets.map((preset) => kind.marks(preset))
  };
}

const SIGNALS = [
  signal(HORN_SOURCE, HORN_PRESETS),
  signal(BELL_SOURCE, BELL_PRESETS),
  signal(CROSSING_SOURCE, CROSSING_PRESETS),
  signal(SQUEAL_SOURCE, SQUEAL_PRESETS),
  signal(SLACK_SOURCE, SLACK_PRESETS),
  signal(COMPRESSOR_SOURCE, COMPRESSOR_PRESETS)
];

describe.each(SIGNALS)('$name', ({ name, knobs, presets, ends, render, marks }) => {
  test('the usual values and the presets are within the knobs', () => {
    checkKnobs(knobs, usualValues(knobs as SoundKnobs));
    presets.forEach((preset) => {
      checkKnobs(knobs, preset);
      expect(preset.kind).toBe(name);
      expect(Object.keys(preset).sort()).toEqual(['kind', 'name', ...Object.keys(knobs)].sort());
    });
  });

  test.each([8000, 44100, 96000])('at %i Hz it is finite and of moderate level', (rate) => {
    const loop = render(rate);
    expect(loop.length / rate).toBeGreaterThan(4);
    expect(loop.length / rate).toBeLessThan(10);
    const peak = loop.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
    expect(peak).toBeGreaterThan(0.05);
    expect(peak).toBeLessThan(1.5);
  });

  test('at 48 kHz it loops without a seam', () => {
    const { step, slope, treble } = seam(render(48000), 48000);
    expect(Math.max(step, slope, treble)).toBeLessThan(1);
  });

  test('every preset loops without a seam at 16 kHz, and without DC', () => {
    presets.forEach((_, preset) => {
      const loop = render(16000, preset);
      const { step, slope, treble } = seam(loop, 16000);
      expect(Math.max(step, slope, treble)).toBeLessThan(1);
      const power = loop.reduce((sum, x) => sum + x * x, 0) / loop.length;
      const mean = loop.reduce((sum, x) => sum + x, 0) / loop.length;
      expect(Math.abs(mean)).toBeLessThan(0.01 * Math.sqrt(power));
    });
  });

  test('every knob at both ends makes finite sound of at most a minute', () => {
    for (const { what, render } of ends) {
      const loop = render();
      expect(loop.length / 8000, what).toBeLessThanOrEqual(60);
      const power = loop.reduce((sum, x) => sum + x * x, 0) / loop.length;
      expect(power > 1e-8 && power < 1, `${what}: power ${power}`).toBe(true);
    }
  });

  test('the seed decides', () => {
    const same = (a: Float32Array, b: Float32Array) => a.length === b.length && a.every((x, i) => x === b[i]);
    expect(same(render(8000), render(8000))).toBe(true);
    expect(same(render(8000), render(8000, 0, { seed: 4321 }))).toBe(false);
  });

  test('all marks are named and within hearing', () => {
    for (const { name, frequency, harmonics } of marks().flat()) {
      expect(name).toMatch(/\S/);
      expect(frequency > 1 && frequency < 20000, name).toBe(true);
      expect(harmonics).toBeGreaterThanOrEqual(1);
    }
  });

  test('what lies out of range is refused', () => {
    expect(() => render(8000, 0, { seed: -1 })).toThrow(
      new RangeError('individual must be a whole number within 0 … 9999, got -1')
    );
    expect(() => render(4000)).toThrow('sample rate must be within 8000 … 192000 Hz, got 4000');
  });
});
