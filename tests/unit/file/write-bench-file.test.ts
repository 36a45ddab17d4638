import { expect, test } from 'vitest';
import { BenchFileError } from '../../../src/lib/file/bench-file-error.js';
import type { BenchFile } from '../../../src/lib/file/bench-file.js';
import { demoBench } from '../../../src/lib/file/demo-bench.js';
import { readBenchFile } from '../../../src/lib/file/read-bench-file.js';
import { writeBenchFile } from '../../../src/lib/file/write-bench-file.js';
import { demoBenchText } from '../../helpers/demo-bench-text.js';

const full = (): BenchFile =>
  readBenchFile(
    demoBenchText((bench) => {
      bench.listener = { angleDeg: 15, plane: 'length', distance: 1.25 };
      bench.sound = { kind: 'recording', name: 'näch\u2028ste "eins".wav', from: 0.1, until: 7.3 };
      bench.setups[0].notes = 'a\nb\t"c" \u{1f682}';
      bench.speakers.bare = { frame: { shape: 'round', diameter: 0.023 } };
      bench.setups[3].turn = 90;
      bench.air.temperatureC = 0.1 + 0.2;
    })
  );

test.each([
  ['a full bench', full()],
  ['the demo bench of the page', demoBench()]
])('%s comes back equal', (_, bench) => {
  expect(readBenchFile(writeBenchFile(bench))).toEqual(bench);
});

test('equal benches make equal text, whatever order their keys have', () => {
  const reversed = (value: unknown): unknown =>
    Array.isArray(value)
      ? value.map(reversed)
      : typeof value === 'object' && value !== null
        ? Object.fromEntries(
            Object.entries(value)
              .reverse()
              .map(([key, inner]) => [key, reversed(inner)])
          )
        : value;
  const bench = full();
  const other = reversed(bench) as BenchFile;
  // the order of the speakers is the user's own
  other.speakers = Object.fromEntries(Object.entries(other.speakers).reverse());
  expect(writeBenchFile(other)).toBe(writeBenchFile(bench));
});

test('the text is to be read by people too: one thing a line, a line end at the end', () => {
  const lines = writeBenchFile(full()).split('\n');
  expect(lines.slice(0, 3)).toEqual(['{', '  "format": "backwave-bench",', '  "version": 8,']);
  expect(lines.at(-1)).toBe('');
});

test('what could not be opened again is not written', () => {
  const broken = full();
  broken.view.heard = 9;
  expect(() => writeBenchFile(broken)).toThrow(BenchFileError);
  const foreign = { ...full(), listener: { angleDeg: NaN, plane: 'width' } } as BenchFile;
  expect(() => writeBenchFile(foreign)).toThrow('listener.angleDeg must be a number, got null');
  const extra = full();
  Object.assign(extra.setups[1].mount, { colour: 'red' });
  expect(() => writeBenchFile(extra)).toThrow('setups[1].mount has an unknown key "colour"');
});
