import { describe, expect, it } from 'vitest';
import { levelCourse } from '../../../src/lib/listening/level-course.js';
import { peak } from '../../../src/lib/listening/peak.js';
import { random } from '../../../src/lib/sounds/blocks/random.js';
import { close } from '../../helpers/close.js';

const RATE = 16000;

describe('levelCourse', () => {
  it('puts a full-scale sine at −3.01 dB with its peaks at 0, at every point', () => {
    const sine = Float32Array.from({ length: RATE }, (_, i) => Math.sin((2 * Math.PI * 1000 * i) / RATE));
    const { duration, window, rmsDb, peakDb } = levelCourse(sine, RATE, 50);
    expect(duration).toBe(1);
    close(window, 0.02, { rel: 1e-12, because: 'a fiftieth of a second' });
    rmsDb.forEach((level) => close(level, -3.0103, { abs: 1e-3, because: 'twenty whole periods' }));
    peakDb.forEach((level) =>
      close(level, 0, { abs: 1e-4, because: 'sixteen samples a period hit the crest' })
    );
  });

  it('adds up to the energy of the whole and keeps its largest sample', () => {
    const chance = random(3);
    const noise = Float32Array.from({ length: 10000 }, () => chance.gaussian() / 8);
    const { rmsDb, peakDb } = levelCourse(noise, RATE, 100);
    const energy = rmsDb.reduce((sum, level) => sum + 100 * 10 ** (level / 10), 0);
    close(
      energy,
      noise.reduce((sum, sample) => sum + sample * sample, 0),
      { rel: 1e-9, because: 'a hundred samples a point, none twice' }
    );
    close(10 ** (Math.max(...peakDb) / 20), peak(noise), { rel: 1e-12, because: 'the same sample' });
  });

  it('follows a step at its time and a falling tone down its slope', () => {
    const step = Float32Array.from({ length: RATE }, (_, i) => (i < RATE / 2 ? 0.1 : 1) * (i % 2 ? 1 : -1));
    const { rmsDb } = levelCourse(step, RATE, 20);
    rmsDb.forEach((level, i) => close(level, i < 10 ? -20 : 0, { abs: 1e-6, because: 'single precision' }));
    // exp(−t/τ) falls by 8.686/τ dB a second.
    const fall = Float32Array.from(
      { length: 2 * RATE },
      (_, i) => Math.exp(-i / RATE / 0.5) * (i % 2 ? 1 : -1)
    );
    const falling = levelCourse(fall, RATE, 100).rmsDb;
    close(falling[75] - falling[25], -8.6859 / 0.5, { abs: 1e-4, because: 'equal stretches 1 s apart' });
  });

  it('looks at 5 ms at least, shifted inward at the ends, and misses no lone sample', () => {
    const click = new Float32Array(RATE);
    for (const at of [0, 4321, RATE - 1]) {
      click.fill(0)[at] = 0.5;
      const { window, rmsDb, peakDb } = levelCourse(click, RATE, 1000);
      expect(window).toBe(0.005);
      const heard = [...peakDb].flatMap((level, i) => (level > -Infinity ? i : []));
      expect(heard).toContain(Math.floor(at / 16));
      expect(heard.length).toBeLessThanOrEqual(6);
      heard.forEach((i) => {
        close(peakDb[i], -6.0206, { abs: 1e-4, because: 'half of full scale' });
        close(rmsDb[i], 10 * Math.log10(0.25 / 80), { abs: 0.06, because: '80 or 81 samples of 5 ms' });
      });
    }
  });

  it('gives every sample to some point when the points do not divide the length', () => {
    const sound = new Float32Array(1003);
    for (let at = 0; at < sound.length; at += 17) {
      sound.fill(0)[at] = 1;
      expect(Math.max(...levelCourse(sound, 8000, 7).peakDb)).toBe(0);
    }
  });

  it('takes a sound shorter than its window whole, and silence as −∞', () => {
    const { rmsDb, peakDb, window } = levelCourse(new Float32Array(8).fill(0.25), RATE, 3);
    expect(window).toBe(8 / RATE);
    rmsDb.forEach((level) => close(level, -12.0412, { abs: 1e-4, because: 'a quarter' }));
    peakDb.forEach((level) => close(level, -12.0412, { abs: 1e-4, because: 'a quarter' }));
    const silent = levelCourse(new Float32Array(100), RATE, 2);
    expect([...silent.rmsDb, ...silent.peakDb]).toEqual([-Infinity, -Infinity, -Infinity, -Infinity]);
  });

  it('refuses what is no sound and no number of points', () => {
    const sound = new Float32Array(10);
    expect(() => levelCourse(new Float32Array(0), RATE, 1)).toThrow('must have at least 1 sample, got 0');
    expect(() => levelCourse(sound, 0, 1)).toThrow('sample rate must be above 0 Hz, got 0');
    for (const points of [0, 1.5, 100001, NaN])
      expect(() => levelCourse(sound, RATE, points)).toThrow(
        `points must be a whole number within 1 … 100000, got ${points}`
      );
  });
});
