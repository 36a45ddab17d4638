import { expect, test } from 'vitest';
import { random } from '../../../../src/lib/sounds/blocks/random.js';
import { cast, strike } from '../../../../src/lib/sounds/signals/struck-metal.js';
import { close } from '../../../helpers/close.js';

const pattern = [
  { name: 'nominal', ratio: 1, decay: 1, level: 1 },
  { name: 'upper', ratio: 2.5, decay: 0.4, level: 0.5 }
];

test('a casting keeps its nominal and moves the others within twice the scatter', () => {
  for (let seed = 0; seed < 50; seed++) {
    const [nominal, upper] = cast(pattern, 800, 3, 0.03, seed);
    expect([nominal.frequency, nominal.decay]).toEqual([800, 3]);
    close(upper.frequency, 2000, { rel: 0.06, because: 'chance is cut at two standard deviations' });
    expect(nominal.split).toBeGreaterThanOrEqual(0.3);
    expect(nominal.split).toBeLessThanOrEqual(1.8);
  }
  const upper = Array.from(
    { length: 400 },
    (_, seed) => cast(pattern, 800, 3, 0.03, seed)[1].frequency / 2000 - 1
  );
  const spread = Math.sqrt(upper.reduce((sum, x) => sum + x * x, 0) / 400);
  close(spread, 0.03 * 0.88, {
    rel: 0.15,
    because: 'a normal value cut at two has 0.88 of the deviation; 400 of them'
  });
});

test('a shorter blow is brighter: the level of a mode falls by 6 dB where the reach ends', () => {
  const blow = (frequency: number, reach: number) => {
    const signal = new Float32Array(4000);
    const partial = { name: '', frequency, split: 1, decay: 1, level: 1 };
    strike(signal, { sampleRate: 8000, cyclic: false }, [partial], 0, 1, reach, random(3));
    return Math.sqrt(signal.reduce((sum, x) => sum + x * x, 0));
  };
  close(blow(1000, 1000) / blow(1000, 1e9), 0.5, { rel: 1e-3, because: '1/(1 + (f/reach)²)' });
  close(blow(3000, 1000) / blow(3000, 1e9), 0.1, { rel: 1e-3, because: '1/(1 + (f/reach)²)' });
});
