import { expect, test } from 'vitest';
import { frequencyWords } from '../../../src/lib/format/frequency-words.js';
import { logGrid } from '../../../src/lib/numeric/log-grid.js';

test('hertz below a thousand, kilohertz from there, without a jump between', () => {
  expect(frequencyWords(346)).toBe('350 Hz');
  expect(frequencyWords(994)).toBe('990 Hz');
  expect(frequencyWords(996)).toBe('1 kHz');
  expect(frequencyWords(1266)).toBe('1.27 kHz');
  expect(frequencyWords(12000)).toBe('12 kHz');
});

test('it is never off by more than 5 %', () => {
  for (const frequency of logGrid(20, 20000, 40)) {
    const [figure, unit] = frequencyWords(frequency).split(' ');
    expect(Math.abs((Number(figure) * (unit === 'kHz' ? 1000 : 1)) / frequency - 1)).toBeLessThan(0.05);
  }
});
