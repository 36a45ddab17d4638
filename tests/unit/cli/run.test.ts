import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { npmScript, run } from '../../../src/cli/run.mjs';
import { temporaryFolder } from '../../helpers/temporary-folder.js';

test('arguments and paths with spaces and quotes arrive as they are', async () => {
  const folder = path.join(temporaryFolder(), "with 'quotes' & spaces");
  mkdirSync(folder);
  const script = path.join(folder, 'check it.mjs');
  writeFileSync(script, `process.exit(process.argv[2] === 'a b "c" $HOME' ? 0 : 3)`);
  expect(await run(process.execPath, [script, 'a b "c" $HOME'])).toBe(0);
  expect(await run(process.execPath, [script, 'else'])).toBe(3);
});

test('the environment is added to', async () => {
  const script = 'process.exit(process.env.PATH && process.env.BACKWAVE_X === "1" ? 0 : 4)';
  expect(await run(process.execPath, ['-e', script], { env: { BACKWAVE_X: '1' } })).toBe(0);
});

test('a program that is not there is exit code 127', async () => {
  expect(await run(path.join(temporaryFolder(), 'no such program'), [])).toBe(127);
});

test("npm is the one that runs, else the one beside Node, and never another program's file", () => {
  const node = path.join('/opt/node here/bin/node');
  const unix = path.join('/opt/node here/lib/node_modules/npm/bin/npm-cli.js');
  const windows = path.join('/opt/node here/bin/node_modules/npm/bin/npm-cli.js');
  const all = () => true;
  expect(npmScript('/x y/npm-cli.js', node, all)).toBe('/x y/npm-cli.js');
  expect(npmScript('/x/yarn.js', node, all)).toBe(windows);
  expect(npmScript(undefined, node, (file) => file === unix)).toBe(unix);
  expect(npmScript(undefined, node, () => false)).toBeNull();
});
