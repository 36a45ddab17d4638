import { expect, test } from 'vitest';
import { fillWithGaussian, random } from '../../../../src/lib/sounds/blocks/random.js';
import { close } from '../../../helpers/close.js';

const COUNT = 200_000;

test('the same seed gives the same sequence, another seed another one', () => {
  const draw = (seed: number) => {
    const chance = random(seed);
    return Array.from({ length: 20 }, () => chance.uniform());
  };
  expect(draw(7)).toEqual(draw(7));
  expect(draw(7)).not.toEqual(draw(8));
});

test('uniform values lie in 0 … 1 with the mean ½, variance 1/12 and no memory', () => {
  const chance = random(1);
  const values = Array.from({ length: COUNT }, () => chance.uniform());
  expect(Math.min(...values.slice(0, 1000))).toBeGreaterThanOrEqual(0);
  expect(values.every((v) => v >= 0 && v < 1)).toBe(true);
  const because = 'five standard errors of 200 000 draws';
  close(mean(values), 0.5, { abs: (5 * Math.sqrt(1 / 12)) / Math.sqrt(COUNT), because });
  close(mean(values.map((v) => (v - 0.5) ** 2)), 1 / 12, { abs: 5 * 0.0745 * 447 ** -1, because });
  const next = values.slice(1).map((v, i) => 12 * (v - 0.5) * (values[i] - 0.5));
  close(mean(next), 0, { abs: 5 / Math.sqrt(COUNT), because });
});

test('gaussian values have the mean 0, variance 1, fourth moment 3 and no memory', () => {
  const chance = random(2);
  const values = Array.from({ length: COUNT }, () => chance.gaussian());
  const because = 'five standard errors of 200 000 draws';
  close(mean(values), 0, { abs: 5 / Math.sqrt(COUNT), because });
  close(mean(values.map((v) => v ** 2)), 1, { abs: (5 * Math.SQRT2) / Math.sqrt(COUNT), because });
  close(mean(values.map((v) => v ** 4)), 3, { abs: (5 * Math.sqrt(96)) / Math.sqrt(COUNT), because });
  close(mean(values.slice(1).map((v, i) => v * values[i])), 0, { abs: 5 / Math.sqrt(COUNT), because });
});

function mean(values: number[]): number {
  return values.reduce((a, b) => a + b, 0) / values.length;
}

test.each([0, 41, -7, 2 ** 32 - 1, 2 ** 31])(
  'an array is filled with the very values of the generator: seed %s',
  (seed) => {
    const chance = random(seed);
    const expected = Float32Array.from({ length: 4001 }, () => 0.7 * chance.gaussian());
    const filled = new Float32Array(4001);
    fillWithGaussian(filled, seed, 0.7);
    expect(filled).toEqual(expected);
  }
);
