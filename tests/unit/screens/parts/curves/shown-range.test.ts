import { expect, test } from 'vitest';
import { Bench } from '../../../../../src/lib/bench/bench.svelte.js';
import { withDrive } from '../../../../../src/lib/bench/circumstances.js';
import { usualRange } from '../../../../../src/lib/plot/scales/picture-range.js';
import { levelText } from '../../../../../src/lib/format/level-text.js';
import { shownRange } from '../../../../../src/lib/screens/parts/curves/shown-range.js';
import { close } from '../../../../helpers/close.js';

test('on request the axis tells dB re 20 µPa of a sine at the drive, where one listens', () => {
  const bench = new Bench();
  expect(shownRange(usualRange, bench)).toBe(usualRange);
  bench.setRealLevel(true);
  bench.revise((file) => withDrive(file, { volts: 2 }));
  // half-space sensitivity of the oval, 67.332 dB at 1 V and 1 m, worked out by hand elsewhere; 2 V are 6.02 dB more
  const { zeroDb, ...range } = shownRange(usualRange, bench);
  expect(range).toEqual(usualRange);
  close(zeroDb!, 67.332 + 6.0206, { abs: 1e-3, because: 'three decimals' });
  expect([levelText(-12.4, zeroDb), levelText(-80, zeroDb), levelText(-Infinity, zeroDb)]).toEqual([
    '61 dB',
    '−7 dB',
    'silent'
  ]);
  bench.setListener({ distance: 0.5 });
  close(shownRange(usualRange, bench).zeroDb!, 67.332 + 12.0412, { abs: 1e-3, because: 'half the distance' });
  bench.setRealLevel(false);
  expect(bench.file.view).not.toHaveProperty('realLevel');
});
