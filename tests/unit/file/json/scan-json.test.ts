import { expect, test } from 'vitest';
import { scanJson } from '../../../../src/lib/file/json/scan-json.js';

test.each([
  ['[[[]]]', 3],
  ['{"a":{"b":[]},"c":[{}]}', 3],
  ['"[[[["', 0],
  ['{"a":"\\"[{"}', 1]
])('%s is not deeper than %i', (text, depth) => {
  expect(() => scanJson(text, depth)).not.toThrow();
  if (depth > 0)
    expect(() => scanJson(text, depth - 1)).toThrow(
      new RangeError(`the bench file is nested more than ${depth - 1} levels deep; no bench is`)
    );
});

test('a key that stands twice is named with the object that it stands in', () => {
  expect(() => scanJson('{"a":[{},{"b":1,"b":2}]}', 9)).toThrow(new RangeError('a[1] has the key "b" twice'));
  expect(() => scanJson('{"a":{"b":1},"c":{"b":1}}', 9)).not.toThrow();
});
