import { describe, expect, test } from 'vitest';
import { type Bell, BELL_PRESETS } from '../../src/lib/sounds/signals/bell.js';
import { BELL_SOURCE } from '../../src/lib/sounds/signals/bell-source.js';
import { COMPRESSOR_PRESETS } from '../../src/lib/sounds/signals/compressor.js';
import { COMPRESSOR_SOURCE } from '../../src/lib/sounds/signals/compressor-source.js';
import { CROSSING_PRESETS } from '../../src/lib/sounds/signals/crossing.js';
import { CROSSING_SOURCE } from '../../src/lib/sounds/signals/crossing-source.js';
import { type Horn, HORN_PRESETS } from '../../src/lib/sounds/signals/horn.js';
import { HORN_SOURCE } from '../../src/lib/sounds/signals/horn-source.js';
import { renderHeldHorn } from '../../src/lib/sounds/signals/render-held-horn.js';
import { filter, section } from '../../src/lib/sounds/blocks/filter.js';
import { close } from '../helpers/close.js';

const RATE = 16000;

/** How strong a frequency is in a stretch of sound, behind a Hann window. */
function strength(x: Float32Array, frequency: number): number {
  const turn = (2 * Math.PI * frequency) / RATE;
  let [re, im] = [0, 0];
  x.forEach((value, i) => {
    const windowed = value * Math.sin((Math.PI * (i + 0.5)) / x.length) ** 2;
    re += windowed * Math.cos(turn * i);
    im += windowed * Math.sin(turn * i);
  });
  return Math.hypot(re, im);
}

/** Where the strongest frequency lies within ±reach cents, to a tenth of a cent: golden section on one peak. */
function peakNear(x: Float32Array, frequency: number, reach: number): number {
  const at = (cents: number) => strength(x, frequency * 2 ** (cents / 1200));
  const step = 2;
  const coarse = Array.from({ length: reach + 1 }, (_, i) => -reach + i * step);
  const best = coarse.map((cents) => [at(cents), cents]).reduce((a, b) => (b[0] > a[0] ? b : a))[1];
  const [left, middle, right] = [at(best - step), at(best), at(best + step)];
  return best + (step * (left - right)) / (2 * (left - 2 * middle + right));
}

// ISO 16:1975: A4 = 440 Hz. Equal temperament, 440·2^(n/12), to three decimals.
const TEMPERED: Record<number, number> = {
  [-9]: 261.626,
  [-7]: 293.665,
  [-6]: 311.127,
  [-4]: 349.228,
  [-3]: 369.994,
  [-1]: 415.305,
  0: 440,
  1: 466.164,
  2: 493.883,
  7: 659.255
};

describe('the horn', () => {
  const held = (horn: Horn) => {
    const { samples, loopFrom } = renderHeldHorn(horn, RATE);
    return samples.subarray(loopFrom);
  };

  test('its notes are tempered pitches, and so are their partials', () => {
    for (const preset of HORN_PRESETS) {
      for (const note of preset.chord) {
        const loop = held({ ...preset, chord: [note], spread: 0 });
        for (const partial of [1, 2, 3, 5])
          close(peakNear(loop, partial * TEMPERED[note], 6), 0, {
            abs: 2,
            because: 'unsteady air moves a bell by a cent; the loop holds whole periods within a tenth of one'
          });
      }
    }
  });

  test('in the chord of a signal the notes are where the marks say, spread as the knob says', () => {
    const horn: Horn = { ...HORN_PRESETS[0], spread: 20 };
    const blast = HORN_SOURCE.render(horn, RATE).subarray(4.9 * RATE, 6 * RATE);
    const cents = HORN_SOURCE.marks(horn).map(({ frequency }, i) => {
      const tempered = TEMPERED[[-7, -3, 0, 2, 7][i]];
      const marked = 1200 * Math.log2(frequency / tempered);
      close(peakNear(blast, tempered, 16), marked, { abs: 2, because: 'unsteady air, 1.1 s of it' });
      return marked;
    });
    close(Math.max(...cents) - Math.min(...cents), 20, {
      abs: 0.01,
      because: 'three decimals of the pitches'
    });
    expect(cents.toSorted((a, b) => a - b).map((x) => Math.round(x) + 0)).toEqual([-10, -5, 0, 5, 10]);
  });

  test('its marks carry the names of the notes', () => {
    expect(HORN_SOURCE.marks(HORN_PRESETS[0]).map(({ name }) => name)).toEqual([
      'D4',
      'G♭4',
      'A4',
      'B4',
      'E5'
    ]);
  });

  // Published tunings lie within about these (from memory), and none of them has these intervals.
  test.each([
    [5, 290, 650, [4, 3, 2, 5]],
    [3, 270, 460, [5, 5]]
  ])(
    'a chord of %i notes has fundamentals of about %i to %i Hz, in intervals of its own',
    (notes, low, high, steps) => {
      const { chord } = HORN_PRESETS.find((preset) => preset.chord.length === notes)!;
      const semitones = (frequency: number, of: number) => 12 * Math.log2(frequency / of);
      expect(semitones(TEMPERED[chord[0]], low)).toBeGreaterThan(-0.6);
      expect(semitones(TEMPERED[chord.at(-1)!], high)).toBeLessThan(0.6);
      expect(chord.slice(1).map((note, i) => note - chord[i])).toEqual(steps);
    }
  );

  test('most of its energy lies in 400 … 1000 Hz, and the rest above', () => {
    for (const preset of HORN_PRESETS.slice(0, 2)) {
      const loop = HORN_SOURCE.render(preset, 48000);
      const span = { sampleRate: 48000, cyclic: true };
      const band = filter(
        filter(loop, section('highPass', 400, 0.7, 48000), span),
        section('lowPass', 1000, 0.7, 48000),
        span
      );
      const power = (x: Float32Array) => x.reduce((sum, v) => sum + v * v, 0);
      expect(power(band) / power(loop)).toBeGreaterThan(0.4);
      const high = filter(loop, section('highPass', 2000, 0.7, 48000), span);
      expect(power(high) / power(loop)).toBeGreaterThan(0.03);
    }
  });

  test('air noise is the stated share of the notes', () => {
    // Between the partials of a single note of 415 Hz there is nothing but air: what is there must follow the knob.
    const between = (air: number) => {
      const loop = held({ ...HORN_PRESETS[0], chord: [-1], air });
      return Math.hypot(
        ...[1.4, 1.5, 1.6, 2.4, 2.5, 2.6, 3.4, 3.5, 3.6].map((n) => strength(loop, n * 415.305))
      );
    };
    close(between(0.4) / between(0.1), 4, { rel: 0.05, because: 'the rest is the skirts of the partials' });
  });
});

describe('the bell', () => {
  /**
   * Decay time of what rings at a frequency: its slow envelope z obeys z[n+2] = a·z[n+1] − b·z[n] for two modes of one
   * decay, with |b| = e^(−2δ·step) (R. de Prony, 1795; least squares over all n).
   */
  function decayAt(x: Float32Array, frequency: number): number {
    const step = Math.round(0.05 * RATE);
    const z: [number, number][] = [];
    for (let from = 0; from + 2 * step <= x.length; from += step) {
      let [re, im] = [0, 0];
      for (let i = 0; i < 2 * step; i++) {
        const angle = (2 * Math.PI * frequency * (from + i)) / RATE;
        const windowed = x[from + i] * Math.sin((Math.PI * (i + 0.5)) / (2 * step)) ** 2;
        re += windowed * Math.cos(angle);
        im -= windowed * Math.sin(angle);
      }
      z.push([re, im]);
    }
    // Normal equations of the complex fit [z1 z0]·[a, −b] = z2, each row weighted by its own size.
    const mul = (p: number[], q: number[]) => [p[0] * q[0] - p[1] * q[1], p[0] * q[1] + p[1] * q[0]];
    const sums = { aa: 0, bb: 0, ab: [0, 0], at: [0, 0], bt: [0, 0] };
    for (let n = 0; n + 2 < z.length; n++) {
      const weight = 1 / (z[n][0] ** 2 + z[n][1] ** 2 + z[n + 1][0] ** 2 + z[n + 1][1] ** 2);
      const [z0, z1] = [z[n], z[n + 1]];
      const [c0, c1] = [z0, z1].map(([re, im]) => [re, -im]);
      const add = (to: number[], by: number[]) => by.forEach((v, k) => (to[k] += weight * v));
      sums.aa += weight * mul(c1, z1)[0];
      sums.bb += weight * mul(c0, z0)[0];
      add(sums.ab, mul(c1, z0));
      add(sums.at, mul(c1, z[n + 2]));
      add(sums.bt, mul(c0, z[n + 2]));
    }
    const determinant = sums.aa * sums.bb - sums.ab[0] ** 2 - sums.ab[1] ** 2;
    const crossed = mul([sums.ab[0], -sums.ab[1]], sums.at);
    const b = [0, 1].map((k) => (sums.aa * sums.bt[k] - crossed[k]) / determinant);
    const delta = -Math.log(Math.hypot(...b)) / (2 * (step / RATE));
    return Math.log(1000) / delta;
  }

  test.each([2, 4, 8])('its nominal falls by 60 dB in the time of the knob, %f s', (decay) => {
    const bell: Bell = { ...BELL_PRESETS[0], rate: 0.4, decay };
    const loop = BELL_SOURCE.render(bell, RATE);
    // From where all echoes of the first stroke have come (0.75 s after it) to the second.
    const ringing = loop.subarray(1.1 * RATE, 2.5 * RATE);
    close(decayAt(ringing, bell.pitch), decay, { rel: 0.05, because: 'the neighbouring partials ring too' });
  });

  test('its nominal has the frequency of the knob', () => {
    for (const preset of BELL_PRESETS) {
      const loop = BELL_SOURCE.render({ ...preset, rate: 0.4 }, RATE);
      const off = peakNear(loop.subarray(1 * RATE, 2.4 * RATE), preset.pitch, 8);
      close(off, 0, {
        abs: 2.8,
        because: 'the pair of modes is up to 1.8 Hz apart, the stronger one is at the nominal'
      });
      const [nominal] = BELL_SOURCE.marks(preset);
      expect(nominal).toEqual({ name: 'nominal', frequency: preset.pitch, harmonics: 1 });
    }
  });

  test('it is not tuned: hum, prime, tierce and quint are away from 0.25, 0.5, 0.6 and 0.75 of the nominal', () => {
    for (const preset of BELL_PRESETS) {
      const ratio = new Map(
        BELL_SOURCE.marks(preset).map(({ name, frequency }) => [name, frequency / preset.pitch])
      );
      const tuned = { hum: 0.25, prime: 0.5, tierce: 0.6, quint: 0.75 };
      const off = Object.entries(tuned).map(([name, share]) =>
        Math.abs(1200 * Math.log2(ratio.get(name)! / share))
      );
      // A founder tunes to a few cents; this bell's partials are a semitone off on the average, none by a third.
      expect(off.reduce((a, b) => a + b) / off.length).toBeGreaterThan(60);
      expect(Math.max(...off)).toBeLessThan(400);
    }
  });
});

/** Level of what lies above a frequency, in stretches of `step` samples. */
function levels(loop: Float32Array, above: number, step: number): number[] {
  const high = filter(loop, section('highPass', above, 0.7, RATE), { sampleRate: RATE, cyclic: true });
  return Array.from({ length: Math.floor(high.length / step) }, (_, n) =>
    Math.sqrt(high.subarray(n * step, (n + 1) * step).reduce((sum, x) => sum + x * x, 0) / step)
  );
}

/** Seconds at which blows begin: where the treble rises at least fourfold over what it was a little earlier. */
function onsets(loop: Float32Array, above: number): number[] {
  const step = 16;
  const level = levels(loop, above, step);
  const top = Math.max(...level);
  const times: number[] = [];
  level.forEach((now, n) => {
    const t = (n * step) / RATE;
    const before = Math.max(...[2, 4, 6].map((back) => level.at(n - back)!));
    if (now > 0.25 * top && now > 2 * before && (times.length === 0 || t - times[times.length - 1] > 0.05))
      times.push(t);
  });
  return times;
}

describe('strokes', () => {
  test.each([1.6, 3.2, 6])('the crossing strikes %f times a second', (rate) => {
    for (const preset of CROSSING_PRESETS) {
      const loop = CROSSING_SOURCE.render({ ...preset, rate }, RATE);
      const times = onsets(loop, 5000);
      const seconds = loop.length / RATE;
      close(times.length / seconds, rate, { rel: 1e-3, because: 'the loop is rounded to a sample' });
      times.forEach((t, i) =>
        close(t, times[0] + i / rate, {
          abs: 0.08 / rate,
          because: 'a hammer is unsteady by 1.2 % of a stroke'
        })
      );
    }
  });

  test('the bell strikes as often as its knob says', () => {
    for (const preset of BELL_PRESETS) {
      const loop = BELL_SOURCE.render(preset, RATE);
      const times = onsets(loop, 6500);
      close(times.length / (loop.length / RATE), preset.rate, { rel: 1e-3, because: 'rounded to a sample' });
    }
  });

  test.each([
    [240, 1],
    [420, 2],
    [600, 3]
  ])(
    'the compressor at %i strokes a minute with %i cylinders beats at the rate of its strokes',
    (strokes, cylinders) => {
      const loop = COMPRESSOR_SOURCE.render({ ...COMPRESSOR_PRESETS[2], strokes, cylinders }, RATE);
      const beats = (strokes / 60) * cylinders;
      const level = levels(loop, 1500, 16);
      const mean = level.reduce((a, b) => a + b) / level.length;
      const line = (frequency: number) => {
        let [re, im] = [0, 0];
        level.forEach((x, n) => {
          re += (x - mean) * Math.cos((2 * Math.PI * frequency * n * 16) / RATE);
          im += (x - mean) * Math.sin((2 * Math.PI * frequency * n * 16) / RATE);
        });
        return Math.hypot(re, im);
      };
      const around = Array.from({ length: 201 }, (_, i) => beats * (0.9 + 0.001 * i));
      const strongest = around.reduce((best, f) => (line(f) > line(best) ? f : best));
      close(strongest, beats, {
        rel: 0.002,
        because: 'looked for in steps of 0.1 %; strokes scatter by 0.6 ms'
      });
      // Nothing beats between the turns.
      expect(line(beats)).toBeGreaterThan(5 * line((strokes / 60) * (cylinders - 0.5)));
    }
  );
});
