import { cpSync, mkdirSync, mkdtempSync, readdirSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';

const root = path.join(import.meta.dirname, '../..');
/** What is in a checkout that has been used and not in one that has not. */
const MADE = ['.git', '.svelte-kit', 'build', 'node_modules', 'playwright-report', 'test-results'];

/** What an npm does in the clone, without a network: a link to each package that the checkout has, and none to its caches. */
const NPM = `
const fs = require('fs');
const path = require('path');
const [packages] = ${JSON.stringify([path.join(root, 'node_modules')])};
if (process.argv[2] !== 'ci') throw new Error('npm was asked to ' + process.argv.slice(2).join(' '));
fs.mkdirSync('node_modules');
fs.copyFileSync(path.join(packages, '.package-lock.json'), 'node_modules/.package-lock.json');
for (const name of fs.readdirSync(packages).filter((name) => !name.startsWith('.')))
  fs.symlinkSync(path.join(packages, name), path.join('node_modules', name), 'junction');
`;

export interface FreshClone {
  folder: string;
  /** The environment of somebody who has just cloned it; its npm is quick. */
  env: NodeJS.ProcessEnv;
  /** Takes away again whatever a command has made. */
  clean(): void;
  remove(): void;
}

/** A copy of the checkout as it is before any command was typed: no packages, nothing built, nothing generated. */
export function freshClone(): FreshClone {
  const top = realpathSync(mkdtempSync(path.join(os.tmpdir(), 'back wave ')));
  const folder = path.join(top, 'clone');
  mkdirSync(folder);
  for (const name of readdirSync(root).filter((name) => !MADE.includes(name)))
    cpSync(path.join(root, name), path.join(folder, name), { recursive: true });
  const npm = path.join(top, 'npm-cli.js');
  writeFileSync(npm, NPM);
  // Nothing that the test run, or an npm around it, says about itself.
  const own = ([name]: [string, unknown]) =>
    !/^(npm_|VITE|NODE_ENV$|INIT_CWD$|TEST$|PROD$|DEV$|MODE$|CI$|FORCE_COLOR$)/.test(name);
  const env = {
    ...Object.fromEntries(Object.entries(process.env).filter(own)),
    npm_execpath: npm,
    // What is said is read: by itself a program colours it where continuous integration runs.
    NO_COLOR: '1',
    // No command of these tests opens a browser; none is to be installed for them.
    CHROMIUM_PATH: process.execPath
  };
  return {
    folder,
    env,
    clean: () => {
      for (const name of MADE) rmSync(path.join(folder, name), { recursive: true, force: true });
    },
    remove: () => rmSync(top, { recursive: true, force: true })
  };
}
