import { expect, test } from 'vitest';
import type { Answer } from '../../../../src/lib/evaluation/answer.js';
import { modelStatus } from '../../../../src/lib/screens/stage/model-words.js';

const rest = { awaited: false, refused: null, progress: null, stopped: false, standsIn: false };
const answer = (accuracy: Answer['accuracy'], solvedTo: number): Answer => ({
  model: accuracy ? 'wave' : 'rule',
  accuracy,
  drive: 1,
  lift: null,
  provisional: accuracy === 'draft',
  solvedTo,
  respond: () => ({ frequency: new Float64Array(), re: new Float64Array(), im: new Float64Array() }),
  driven: () => {
    throw new Error('nothing is driven here');
  }
});
const wave = { ...rest, model: 'wave' as const };

test('what is said of the model: what it is good for, how far it has come, and why it cannot be', () => {
  const said = (part: Partial<Parameters<typeof modelStatus>[0]>) =>
    modelStatus({ ...wave, answer: null, ...part });
  expect(said({ model: 'rule', answer: answer(null, Infinity) }).text).toMatch(/first-order/);
  expect(said({ answer: answer(null, Infinity), awaited: true }).text).toMatch(
    /^being solved: you hear the rule of thumb$/
  );
  expect(said({ answer: answer('draft', 3000), awaited: true, progress: 0.2 }).text).toBe(
    'a draft, within 0.6 dB up to 3 kHz; in full in a moment'
  );
  expect(said({ answer: answer('draft', 3000), awaited: true, stopped: true }).text).toMatch(
    /stopped there$/
  );
  expect(said({ answer: answer('draft', 3000), standsIn: true }).text).toMatch(
    /you still hear the rule of thumb/
  );
  expect(said({ answer: answer('full', 8123) }).text).toBe('solved in full: within 0.3 dB up to 8.1 kHz');
  expect(said({ answer: answer('full', 10000), awaited: true }).text).toMatch(/of the size before/);
  expect(said({ answer: answer(null, Infinity), refused: 'too slender' })).toEqual({
    text: 'The rule of thumb stands in: too slender',
    alarm: true
  });
  expect(said({ answer: answer('draft', 3000), refused: 'it failed' }).text).toBe('Only a draft: it failed');
});
