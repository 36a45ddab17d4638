import { describe, expect, test } from 'vitest';
import { type Engine, engineRpm, firingRate, patternRate, PRIME_MOVER } from '../../src/lib/sounds/engine.js';
import { renderEngine } from '../../src/lib/sounds/render-engine.js';
import { close } from '../helpers/close.js';

const RATE = 16000;

/** Amplitude of a loop at exactly `periods` periods in it. */
function line(samples: Float32Array, periods: number): number {
  let re = 0;
  let im = 0;
  samples.forEach((x, i) => {
    const angle = (2 * Math.PI * periods * i) / samples.length;
    re += x * Math.cos(angle);
    im += x * Math.sin(angle);
  });
  return (2 * Math.hypot(re, im)) / samples.length;
}

// Usual speeds of medium-speed engines at idle and at full load, published in operators' handbooks (values from memory).
describe('firing rates', () => {
  test.each<[Engine['cycle'], number, number, number]>([
    ['four-stroke', 16, 450, 60],
    ['four-stroke', 16, 1050, 140],
    ['two-stroke', 16, 315, 84],
    ['two-stroke', 16, 904, 241],
    ['four-stroke', 12, 400, 40]
  ])('%s, %i cylinders, %i rpm: %f Hz', (cycle, cylinders, rpm, expected) => {
    close(firingRate({ ...PRIME_MOVER, cycle, cylinders }, rpm), expected, {
      rel: 0.0005,
      because: 'the last was rounded to whole hertz'
    });
  });
});

// The rendered sound has what kinematics predicts: lines at multiples of the pattern rate, strongest at firings.
test.each<[Engine['cycle'], number, number]>([
  ['four-stroke', 12, 0],
  ['four-stroke', 12, 8],
  ['two-stroke', 8, 4]
])(
  'a %s engine of %i cylinders at notch %i has its lines where its firings are',
  (cycle, cylinders, notch) => {
    const engine: Engine = { ...PRIME_MOVER, cycle, cylinders };
    const samples = renderEngine(engine, notch, RATE);
    const rpm = engineRpm(engine, notch);
    const seconds = samples.length / RATE;
    const patterns = Math.round(patternRate(engine, rpm) * seconds);
    close(patterns / seconds, patternRate(engine, rpm), {
      rel: 1e-4,
      because: 'the loop is a whole number of samples'
    });
    const firing = line(samples, patterns * cylinders);
    const between = [-0.5, 0.5, 1.5].map((orders) =>
      line(samples, Math.round(patterns * (cylinders + orders)))
    );
    expect(firing).toBeGreaterThan(3 * Math.max(...between));
    const pattern = Array.from({ length: cylinders * 2 }, (_, k) => line(samples, patterns * (k + 1)));
    const rest = Array.from({ length: cylinders * 2 }, (_, k) =>
      line(samples, Math.round(patterns * (k + 1.5)))
    );
    const power = (lines: number[]) => lines.reduce((sum, x) => sum + x * x, 0);
    expect(power(pattern)).toBeGreaterThan(10 * power(rest));
  }
);
