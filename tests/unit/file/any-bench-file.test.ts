import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BenchFileError } from '../../../src/lib/file/bench-file-error.js';
import { readBenchFile } from '../../../src/lib/file/read-bench-file.js';
import { writeBenchFile } from '../../../src/lib/file/write-bench-file.js';
import { arbitraryBench } from '../../helpers/arbitrary-bench.js';
import { demoBenchText } from '../../helpers/demo-bench-text.js';

/** Reads it; what comes is a bench or the reader's own error with one sentence on one line. */
function readOrRefuse(text: string): boolean {
  try {
    readBenchFile(text);
    return true;
  } catch (error) {
    expect(error).toBeInstanceOf(BenchFileError);
    const { message } = error as Error;
    expect(message.length).toBeGreaterThan(5);
    expect(message.length).toBeLessThan(600);
    expect(message).not.toMatch(/[\n\r\u2028\u2029]/);
    return false;
  }
}

test('any bench, written and read, is equal, and its text is its own again', () => {
  fc.assert(
    fc.property(arbitraryBench, (bench) => {
      const text = writeBenchFile(bench);
      const back = readBenchFile(text);
      expect(back).toEqual(bench);
      expect(writeBenchFile(back)).toBe(text);
    }),
    { numRuns: 300 }
  );
});

test('any text is read or refused in one sentence', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => {
      readOrRefuse(text);
    }),
    { numRuns: 1000 }
  );
});

test('any JSON value is read or refused in one sentence', () => {
  fc.assert(
    fc.property(fc.json({ maxDepth: 8 }), (text) => {
      readOrRefuse(text);
    }),
    { numRuns: 1000 }
  );
});

test('any JSON value under the name of a bench is read or refused in one sentence', () => {
  const keys = ['air', 'speakers', 'setups', 'listener', 'sound', 'view', 'extra'];
  const object = fc.dictionary(fc.constantFrom(...keys), fc.jsonValue({ maxDepth: 5 }));
  fc.assert(
    fc.property(object, (value) => {
      readOrRefuse(JSON.stringify({ format: 'backwave-bench', version: 1, ...value }));
    }),
    { numRuns: 1000 }
  );
});

test('a valid file with signs cut out, put in or doubled is read or refused in one sentence', () => {
  const whole = demoBenchText();
  const cut = fc.record({
    at: fc.nat(whole.length),
    long: fc.nat(40),
    instead: fc.oneof(fc.string({ unit: 'binary', maxLength: 8 }), fc.constantFrom(...'{}[],:"0-e.\\\u2028'))
  });
  let [read, refused] = [0, 0];
  fc.assert(
    fc.property(fc.array(cut, { minLength: 1, maxLength: 4 }), (cuts) => {
      let text = whole;
      for (const { at, long, instead } of cuts) text = text.slice(0, at) + instead + text.slice(at + long);
      if (readOrRefuse(text)) read++;
      else refused++;
    }),
    { numRuns: 2000 }
  );
  expect(refused).toBeGreaterThan(100);
  expect(read + refused).toBeGreaterThanOrEqual(2000);
});

test('a valid file with one value replaced by anything is read or refused in one sentence', () => {
  const places = paths(JSON.parse(demoBenchText()));
  fc.assert(
    fc.property(fc.constantFrom(...places), fc.jsonValue({ maxDepth: 4 }), (place, value) => {
      const bench = JSON.parse(demoBenchText());
      let inside = bench;
      for (const step of place.slice(0, -1)) inside = inside[step];
      inside[place.at(-1)!] = value;
      readOrRefuse(JSON.stringify(bench));
    }),
    { numRuns: 1500 }
  );
});

/** The way to every value inside another, by keys. */
function paths(value: unknown, before: string[] = []): string[][] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => [
    [...before, key],
    ...paths(inner, [...before, key])
  ]);
}

const nested = (open: string, close: string, depth: number) => open.repeat(depth) + close.repeat(depth);

test.each<[string, string]>([
  ['a hundred thousand lists in each other', nested('[', ']', 100_000)],
  ['a hundred thousand objects in each other', nested('{"a":', '}', 100_000)],
  [
    'nesting in a place where nothing is nested',
    demoBenchText().replace('"setups"', `"x":${nested('[', ']', 5000)},"setups"`)
  ],
  [
    'a hundred thousand setups',
    demoBenchText((b) => (b.setups = Array(100_000).fill({}) as typeof b.setups))
  ],
  [
    'a million setups',
    `{"format":"backwave-bench","version":1,"speakers":{},"setups":[${'0,'.repeat(999_999)}0]}`
  ],
  ['a number that no double holds', demoBenchText((b) => (b.air.temperatureC = '#')).replace('"#"', '1e999')],
  ['a key of a hundred thousand signs', demoBenchText((b) => (b['k'.repeat(100_000)] = 1))],
  [
    'a name of markup a hundred thousand signs long',
    demoBenchText((b) => (b.setups[0].name = '<b>'.repeat(33_333)))
  ]
])('hostile, refused: %s', (_, text) => {
  expect(readOrRefuse(text)).toBe(false);
});

test.each(['__proto__', 'constructor', 'prototype'])(
  'hostile, refused wherever it stands: the key %s',
  (key) => {
    const marked = (place: RegExp) =>
      demoBenchText().replace(place, (found) => `${found}"${key}":{"polluted":1},`);
    for (const place of [/\{/, /"speakers":\{/, /"setups":\[\{/, /"mount":\{/])
      expect(readOrRefuse(marked(place))).toBe(false);
    // Written with an escape, too.
    expect(
      readOrRefuse(demoBenchText().replace('{', `{"${key.replace('o', '\\u006f')}":{"polluted":1},`))
    ).toBe(false);
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
  }
);

test('markup in names and notes is text like any other', () => {
  const markup = '<img src=x onerror=alert(1)> & "quotes" \u202e';
  const bench = readBenchFile(
    demoBenchText((b) => {
      b.setups[0].name = markup;
      b.setups[0].notes = markup;
    })
  );
  expect(bench.setups[0].name).toBe(markup);
  expect(readBenchFile(writeBenchFile(bench))).toEqual(bench);
});
