import { expect, test } from 'vitest';
import { soundLevelDb } from '../../../../src/lib/evaluation/sound-level.js';
import { soundBands } from '../../../../src/lib/screens/response/sound-bands.js';
import { LoopFilter } from '../../../../src/lib/numeric/filter-with.js';
import { measureSound } from '../../../../src/lib/listening/measure-sound.js';
import { renderPinkNoise } from '../../../../src/lib/sounds/test-signals/pink-noise.js';
import { close } from '../../../helpers/close.js';
import { byRule, computedByRule } from '../../../helpers/by-rule.js';
import { DEMO } from '../../../helpers/demo-installations.js';

const noise = renderPinkNoise(8, 48000, 3);
const figures = measureSound(noise, 48000);

test('what is filled is what a measurement behind the mount finds', () => {
  for (const name of ['free air', 'flat plate', 'closed box']) {
    const bands = soundBands(figures, byRule(DEMO[name]));
    const { impulseResponse } = computedByRule(DEMO[name]);
    const through = new LoopFilter(noise, impulseResponse.length).through(impulseResponse);
    const measured = soundBands(measureSound(through, 48000), null);
    for (const [i, { label, low, filledDb }] of bands.entries())
      if (low > 150)
        close(filledDb, measured[i].outlineDb, {
          abs: 0.3,
          because: `window of the spectrum, ${name} at ${label}`
        });
  }
});

test('the outline does not depend on the mount, and a mount that cannot be built lets nothing through', () => {
  const none = soundBands(figures, null);
  const plate = soundBands(figures, byRule(DEMO['flat plate']));
  expect(none.map(({ outlineDb }) => outlineDb)).toEqual(plate.map(({ outlineDb }) => outlineDb));
  expect(none.every(({ filledDb }) => filledDb === -Infinity)).toBe(true);
});

test('on the axis of real levels the bars together are the level of the sound there', () => {
  const answer = byRule(DEMO['closed box']);
  const sum = (levels: number[]) =>
    10 * Math.log10(levels.reduce((all, level) => all + 10 ** (level / 10), 0));
  const bands = soundBands(figures, answer, true);
  // pink noise has as much in every octave: what lies outside the picture is little of the whole, and nothing behind the box
  close(sum(bands.map(({ filledDb }) => filledDb)), soundLevelDb(answer, figures, 0), {
    abs: 0.2,
    because: 'the picture ends at 16 kHz'
  });
});

test('the bands are third octaves that touch', () => {
  const bands = soundBands(figures, null);
  for (let i = 1; i < bands.length; i++) expect(bands[i].low).toBeCloseTo(bands[i - 1].high, 6);
});
