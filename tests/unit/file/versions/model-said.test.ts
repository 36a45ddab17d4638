import { expect, test } from 'vitest';
import { readBenchFile } from '../../../../src/lib/file/read-bench-file.js';
import { MODEL_SAID } from '../../../../src/lib/file/versions/model-said.js';
import { demoBenchText } from '../../../helpers/demo-bench-text.js';

const { raise } = MODEL_SAID;

test.each([
  [{ version: 1 }, { version: 1, view: { model: 'rule' } }],
  [
    { version: 1, view: { heard: 2, inches: true } },
    { version: 1, view: { heard: 2, inches: true, model: 'rule' } }
  ]
])('an old file that does not say its model meant the rule of thumb: %j', (file, raised) => {
  expect(raise(file)).toEqual(raised);
});

test.each([[{ view: { model: 'wave' } }], [{ view: { model: 'magic' } }], [{ view: 5 }], [{ view: null }]])(
  'all else is handed on untouched: %j',
  (file) => {
    expect(raise(file)).toBe(file);
  }
);

test.each([
  [1, undefined, 'rule'],
  [1, 'wave', 'wave'],
  [2, undefined, 'wave'],
  [2, 'rule', 'rule']
])('a file of version %i that says %j opens with the %s', (version, model, opened) => {
  const text = demoBenchText((bench) => {
    bench.version = version;
    bench.view = model ? { model } : {};
  });
  expect(readBenchFile(text).view.model).toBe(opened);
});
