import { expect, test } from 'vitest';
import type { Listener } from '../../../../../src/lib/acoustics/listener.js';
import { ruleOfThumb } from '../../../../../src/lib/acoustics/rule/rule-of-thumb.js';
import { ruleAnswer, waveAnswer } from '../../../../../src/lib/evaluation/answer.js';
import { ruleReaches } from '../../../../../src/lib/screens/parts/curves/rule-reaches.js';
import { compute } from '../../../../../src/lib/evaluation/stand.js';
import { ruleWords } from '../../../../../src/lib/screens/parts/curves/rule-words.js';
import { levelDb } from '../../../../../src/lib/numeric/level-db.js';
import { logGrid } from '../../../../../src/lib/numeric/log-grid.js';
import type { AccuracyName } from '../../../../../src/lib/waves/mesh/accuracy.js';
import { hearWaves } from '../../../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../../../src/lib/waves/wave-solution.js';
import { AIR, DEMO, IN_FRONT } from '../../../../helpers/demo-installations.js';

const installation = DEMO['cab body'];

function where(accuracy: AccuracyName, listener: Listener = IN_FRONT) {
  const heard = hearWaves(solveMount(installation, AIR, { accuracy }), listener);
  const answer = waveAnswer(heard, accuracy, installation, AIR);
  const computed = compute(installation, AIR, answer, 48000);
  return { heard: { index: 2, installation, computed }, file: { air: AIR }, listener };
}

test('up to there the rule of thumb is within 3 dB of the wave solution, and just above it is not', () => {
  const shell = where('full');
  const { upTo, end } = ruleReaches(shell)!;
  const off = (frequency: Float64Array) => {
    const rule = levelDb(ruleOfThumb(installation, AIR, IN_FRONT, frequency));
    const wave = levelDb(shell.heard.computed.answer.respond(frequency));
    return Math.max(...rule.map((level, i) => Math.abs(level - wave[i])));
  };
  expect(off(logGrid(50, 0.99 * upTo!, 100))).toBeLessThan(3);
  expect(off(Float64Array.of(1.01 * upTo!))).toBeGreaterThan(3);
  expect(upTo).toBeGreaterThan(600);
  expect(upTo).toBeLessThan(900);
  expect(end).toBeGreaterThan(9500);
  expect(end).toBeLessThanOrEqual(10000);
});

test('nothing is said of a draft, of the rule itself, and off the axis', () => {
  expect(ruleReaches(where('draft'))).toBeNull();
  expect(ruleReaches(where('full', { ...IN_FRONT, angleDeg: 30 }))).toBeNull();
  const computed = compute(installation, AIR, ruleAnswer(installation, AIR, IN_FRONT), 48000);
  const byRule = { heard: { index: 2, installation, computed }, file: { air: AIR }, listener: IN_FRONT };
  expect(ruleReaches(byRule)).toBeNull();
});

test('in words', () => {
  expect(ruleWords(null)).toBe('rule of thumb');
  expect(ruleWords({ upTo: 712, end: 9950 })).toBe('rule of thumb, good to 710\u00a0Hz');
  expect(ruleWords({ upTo: 8210, end: 9950 })).toBe('rule of thumb, good to 8.2\u00a0kHz');
  expect(ruleWords({ upTo: 9950, end: 9950 })).toBe('rule of thumb, good all through');
  expect(ruleWords({ upTo: null, end: 9950 })).toBe('rule of thumb: poor in the bass');
});
