import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  cleanName,
  fileNameOf,
  freeName,
  looksLikeBench,
  nameOfFile
} from '../../../../src/lib/bench/keep/bench-name.js';

test.each([
  ['Yard', [], 'Yard'],
  ['Yard', ['Yard'], 'Yard 2'],
  ['Yard 2', ['Yard', 'Yard 2'], 'Yard 3'],
  ['No. 41', ['No. 41'], 'No. 41 2'],
  ['No. 41 2', ['No. 41', 'No. 41 2'], 'No. 41 3']
])('a free name for %s beside %j is %s', (name, taken, free) => {
  expect(freeName(name, taken)).toBe(free);
});

test('a free name is never taken, never too long and never empty', () => {
  const name = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 80 }).map(cleanName);
  fc.assert(
    fc.property(
      name.filter((text) => text !== ''),
      fc.array(name),
      (wanted, others) => {
        const taken = [...others, wanted, `${wanted} 2`];
        const free = freeName(wanted, taken);
        expect(taken).not.toContain(free);
        expect(free.trim()).not.toBe('');
        expect(Array.from(free).length).toBeLessThanOrEqual(90);
      }
    )
  );
});

test('a file name has no sign that a system refuses, and ends as benches do', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (name) => {
      const file = fileNameOf(name);
      expect(file).toMatch(/^[^.\s].*\.backwave\.json$/su);
      expect(file).not.toMatch(/[\p{Cc}<>:"/\\|?*]/u);
      expect(file.length).toBeLessThan(130);
    })
  );
});

test.each([
  ['No. 41.backwave.json', 'No. 41'],
  ['layout.json', 'layout'],
  ['layout.backwave', 'layout'],
  ['.backwave.json', 'My bench'],
  ['plain', 'plain']
])('the bench of the file %s is called %s', (file, name) => {
  expect(nameOfFile(file)).toBe(name);
});

test.each([
  [{ name: 'a.backwave.json', type: '' }, true],
  [{ name: 'A.JSON', type: '' }, true],
  [{ name: 'a.backwave', type: '' }, true],
  [{ name: 'a', type: 'application/json' }, true],
  [{ name: 'a.wav', type: 'audio/wav' }, false],
  [{ name: 'json.mp3', type: '' }, false]
])('%j looks like a bench: %s', (file, looks) => {
  expect(looksLikeBench(file)).toBe(looks);
});
