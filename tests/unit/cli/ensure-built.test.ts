import { mkdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { needsBuild, sourceHash } from '../../../src/cli/ensure-built.mjs';
import { temporaryFolder } from '../../helpers/temporary-folder.js';

/** A checkout with a build of its sources. */
function built(): string {
  const folder = temporaryFolder();
  for (const name of ['src/lib/deep', 'src/cli', 'static', 'build'])
    mkdirSync(path.join(folder, name), { recursive: true });
  writeFileSync(path.join(folder, 'src/app.html'), 'page');
  writeFileSync(path.join(folder, 'src/lib/deep/a.ts'), 'one');
  writeFileSync(path.join(folder, 'package.json'), '{}');
  writeFileSync(path.join(folder, 'build/index.html'), 'built');
  writeFileSync(path.join(folder, 'build/.built-from'), sourceHash(folder));
  return folder;
}

test('a build of the present sources is kept', () => {
  const folder = built();
  expect(needsBuild(folder)).toBe(false);
});

test('a new time alone is no change', () => {
  const folder = built();
  utimesSync(path.join(folder, 'src/lib/deep/a.ts'), new Date(), new Date());
  expect(needsBuild(folder)).toBe(false);
});

test('what the page is not made of is no change', () => {
  const folder = built();
  writeFileSync(path.join(folder, 'src/cli/start.mjs'), 'new');
  expect(needsBuild(folder)).toBe(false);
});

test.each<[string, (folder: string) => void]>([
  ['a changed source', (f) => writeFileSync(path.join(f, 'src/lib/deep/a.ts'), 'two')],
  ['a new source', (f) => writeFileSync(path.join(f, 'static/b.svg'), '')],
  ['a removed source', (f) => rmSync(path.join(f, 'src/lib/deep/a.ts'))],
  ['a changed package', (f) => writeFileSync(path.join(f, 'package.json'), '{ }')],
  ['no build', (f) => rmSync(path.join(f, 'build'), { recursive: true })],
  ['a build of unknown sources', (f) => rmSync(path.join(f, 'build/.built-from'))]
])('%s asks for a build', (_, change) => {
  const folder = built();
  change(folder);
  expect(needsBuild(folder)).toBe(true);
});
