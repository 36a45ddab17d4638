import { expect, test } from 'vitest';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import type { Limits } from '../../../../src/lib/evaluation/limits.js';
import {
  costLines,
  liftCosts,
  loadVerdict,
  loadWarning,
  safeWords
} from '../../../../src/lib/screens/drive/limit-words.js';

const LIMITS: Limits = {
  travel: 0.00042,
  heat: { mean: 0.1, loudest: 0.34 },
  terminals: 1.4,
  clipping: 0.8,
  most: { travel: 2.7, heat: 3.4, clipping: 1.76 },
  first: { limit: 'clipping', volts: 1.76 }
};

test('each cost stands beside what is allowed', () => {
  expect(costLines(LIMITS, SPEAKERS.oval.motor)).toEqual([
    { limit: 'travel', name: 'travel of the cone', figure: '0.42 of 0.8 mm', share: 0.525 },
    { limit: 'heat', name: 'heat in the coil, loudest second', figure: '0.34 of 2 W', share: 0.17 },
    {
      limit: 'clipping',
      name: 'voltage at its peak',
      figure: '80 % of the amplifier’s',
      share: 0.8
    }
  ]);
  expect(costLines({ ...LIMITS, clipping: null }, SPEAKERS.oval.motor)).toHaveLength(2);
});

test('which limit comes first is said', () => {
  expect(safeWords(LIMITS, { volts: 1 })).toBe(
    'Safe on this sound up to a drive of 1.8 V: then the amplifier clips.'
  );
  // 0.5² / 8 = 0.03125
  expect(safeWords({ ...LIMITS, first: { limit: 'travel', volts: 0.5 } }, { watts: 0.06, into: 8 })).toBe(
    'Safe on this sound up to a drive of 0.031 W into 8 Ω (0.5 V): then the cone comes to the end of its travel.'
  );
});

test('what a lift costs is said beside none: what is lifted, from where, and the drive that would be safe', () => {
  const lifted: Limits = {
    ...LIMITS,
    travel: 0.00084,
    heat: { mean: 0.2, loudest: 0.51 },
    terminals: 1.9,
    first: { limit: 'travel', volts: 0.9 }
  };
  expect(liftCosts({ gainDb: 6, below: 300 }, lifted, LIMITS)).toBe(
    'Low end lifted by 6 dB below 300 Hz: 2 times the travel and 1.5 times the heat. The amplifier gives 1.9 V then. Without the lift, up to 1.8 V would be safe.'
  );
});

test('too low a load is a plain warning, a coil a little below its stated ohms is not', () => {
  const curve = (ohms: number) => ({
    frequency: new Float64Array(),
    ohms: new Float64Array(),
    least: { ohms, frequency: 20 }
  });
  expect(loadWarning(curve(3.6), { leastLoad: 8, power: 1 })).toBe(
    'Too low a load: 3.6 Ω at 20 Hz, and this amplifier needs 8 Ω. It may switch off or burn; its maker’s instructions decide.'
  );
  expect(loadWarning(curve(7.2), { leastLoad: 8, power: 1 })).toBeNull();
  expect(loadVerdict(curve(7.2), { leastLoad: 8, power: 1 })).toBe(
    '7.2 Ω at the least: near enough to the 8 Ω that this amplifier needs. A coil measures about a tenth less than it is called (common practice).'
  );
  expect(loadVerdict(curve(7.2), { leastLoad: 4, power: 3 })).toBe(
    '7.2 Ω at the least: this amplifier may drive it.'
  );
  expect(loadWarning(curve(3.6), { leastLoad: 4, power: 3 })).toBeNull();
});
