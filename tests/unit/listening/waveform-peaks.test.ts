import { expect, test } from 'vitest';
import { waveformPeaks } from '../../../src/lib/listening/waveform-peaks.js';

test('the largest part is 1, and every part is where its sound is', () => {
  const samples = new Float32Array(1000);
  samples[50] = -0.2;
  samples[999] = 0.1;
  expect([...waveformPeaks(samples, 10)]).toEqual(
    [1, 0, 0, 0, 0, 0, 0, 0, 0, 0.5].map((x) => expect.closeTo(x, 6))
  );
});

test('it does not depend on how loud the sound is', () => {
  const samples = Float32Array.from({ length: 5000 }, (_, i) => Math.sin(i / 9) * (i / 5000));
  const loud = waveformPeaks(samples, 40);
  const quiet = waveformPeaks(
    samples.map((value) => value * 0.001),
    40
  );
  for (let i = 0; i < 40; i++) expect(quiet[i]).toBeCloseTo(loud[i], 5);
});

test('silence is flat, and fewer samples than columns leave some empty', () => {
  expect(waveformPeaks(new Float32Array(100), 7)).toEqual(new Float64Array(7));
  expect(waveformPeaks(Float32Array.of(0.5), 4)).toEqual(Float64Array.of(1, 0, 0, 0));
});

test('there is at least one column', () => {
  for (const columns of [0, 2.5, NaN])
    expect(() => waveformPeaks(new Float32Array(4), columns)).toThrow(
      `columns of a waveform must be a whole number of at least 1, got ${columns}`
    );
});
