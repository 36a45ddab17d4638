import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { MODEL_NAMES } from '../../../src/lib/evaluation/models.js';

const src = path.join(import.meta.dirname, '../../../src');

/** Where a model may be named: the file's type and steps between versions, the table, and what makes the answers that bear the name. */
const MAY = [
  'lib/file/bench-file.ts',
  'lib/file/versions/model-said.ts',
  'lib/evaluation/models.ts',
  'lib/evaluation/answer.ts'
];

/** The files that name a model in quotes. Words are keyed by it without: `Record<ModelName, …>`. */
function naming(files: { name: string; text: string }[]): string[] {
  const named = new RegExp(`'(${MODEL_NAMES.join('|')})'`);
  return files.filter(({ text }) => named.test(text)).map(({ name }) => name);
}

/** The files that compare how finely something was solved: what stands for "solved by the workers, to the end". */
function comparing(files: { name: string; text: string }[]): string[] {
  return files.filter(({ text }) => /accuracy [!=]== '/.test(text)).map(({ name }) => name);
}

const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.(ts|mjs|svelte)$/.test(name))
  // It names the rooms of the house, one of which is called like a model.
  .filter((name) => path.basename(name) !== 'one-way-doors.mjs')
  .map((name) => ({ name: name.replaceAll('\\', '/'), text: readFileSync(path.join(src, name), 'utf8') }));

test('nothing but the table and the file names a model: whoever wants to know asks what it can do', () => {
  expect(files.length).toBeGreaterThan(300);
  expect(naming(files).sort()).toEqual([...MAY].sort());
  expect(naming([{ name: 'a.ts', text: `if (answer.model === '${MODEL_NAMES[0]}') return;` }])).toEqual([
    'a.ts'
  ]);
});

test('how finely it was solved is compared only where answers are made and solutions are asked for', () => {
  expect(comparing(files).sort()).toEqual(['lib/evaluation/answer.ts', 'lib/evaluation/wave-jobs.ts']);
});
