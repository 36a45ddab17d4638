import { expect, test } from 'vitest';
import {
  checkDuration,
  checkRecording,
  MAX_DURATION
} from '../../../../src/lib/sounds/recording/check-recording.js';

test('an hour is too long, ten minutes are not, nothing is nothing', () => {
  expect(checkDuration(MAX_DURATION)).toBeNull();
  expect(checkDuration(3600)).toBe('This recording is too long: 60 minutes, at most 10 can be opened.');
  expect(checkDuration(0)).toBe('This recording is empty.');
  expect(checkDuration(NaN)).toBe('This recording is empty.');
});

test('decoded recordings: sound passes; empty, silent, damaged and too long ones are named so', () => {
  const sound = Float32Array.of(0, 0.1, -0.1);
  expect(checkRecording([sound], 8000)).toBeNull();
  expect(checkRecording([new Float32Array(3), sound], 8000)).toBeNull();
  expect(checkRecording([], 8000)).toBe('This recording is empty.');
  expect(checkRecording([new Float32Array(0)], 8000)).toBe('This recording is empty.');
  expect(checkRecording([new Float32Array(9), new Float32Array(9)], 8000)).toBe('This recording is silent.');
  for (const bad of [NaN, Infinity, -Infinity])
    expect(checkRecording([sound, Float32Array.of(0, bad, 0)], 8000)).toMatch('damaged');
  expect(checkRecording([new Float32Array(8000)], 8)).toMatch('too long');
});
