import { expect, test } from 'vitest';
import { USUAL_RANGE } from '../../../src/lib/numeric/third-octave-bands.js';
import { RealFft } from '../../../src/lib/numeric/fft.js';
import { close } from '../../helpers/close.js';
import { computedByRule } from '../../helpers/by-rule.js';
import { DEMO, ovalIn } from '../../helpers/demo-installations.js';

test('what is drawn is what is heard: the filter’s transform lies on the drawn curve', () => {
  for (const [name, installation] of Object.entries(DEMO)) {
    const { response, responseDb, impulseResponse } = computedByRule(installation);
    const { re, im } = new RealFft(impulseResponse.length).forward(Float64Array.from(impulseResponse));
    const width = 48000 / impulseResponse.length;
    for (let k = Math.ceil(100 / width); k * width < 12000; k += 7) {
      const at = response.frequency.findIndex((frequency) => frequency >= k * width);
      const share =
        Math.log((k * width) / response.frequency[at - 1]) /
        Math.log(response.frequency[at] / response.frequency[at - 1]);
      const drawn = responseDb[at - 1] + (responseDb[at] - responseDb[at - 1]) * share;
      close(10 * Math.log10(re[k] ** 2 + im[k] ** 2), drawn, {
        abs: 0.1,
        because: `agreed for every branch: ${name}`
      });
    }
  }
});

test('the picture’s grid has at least 48 points an octave, from end to end', () => {
  const { frequency } = computedByRule(DEMO['free air']).response;
  expect(frequency[0]).toBeCloseTo(USUAL_RANGE.from, 6);
  expect(frequency.at(-1)).toBeCloseTo(USUAL_RANGE.to, 3);
  for (let i = 1; i < frequency.length; i++)
    expect(Math.log2(frequency[i] / frequency[i - 1])).toBeLessThan(1 / 48 + 1e-9);
});

test('the filter is as long in time at another rate', () => {
  const lengths = [44100, 48000, 96000].map(
    (rate) => computedByRule(DEMO['flat plate'], rate).impulseResponse.length / rate
  );
  for (const seconds of lengths) expect(seconds).toBeGreaterThanOrEqual(2048 / 48000);
});

test('a box has no string, an open mount no box', () => {
  const box = computedByRule(DEMO['closed box']);
  expect([box.string, box.figures.string]).toEqual([null, null]);
  const plate = computedByRule(DEMO['flat plate']);
  expect(plate.figures.box).toBeNull();
  expect(plate.string!.length).toBe(plate.figures.string);
});

test('what cannot be built is refused', () => {
  const small = ovalIn({ kind: 'plate', shape: 'rectangle', length: 0.03, width: 0.03, offset: [0, 0] });
  expect(() => computedByRule(small)).toThrow(RangeError);
});
