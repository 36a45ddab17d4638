import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { defineConfig } from '@playwright/test';
import { AUTOPLAY, launchOptions, SHORT_LIVED } from '../helpers/launch-options.js';

const root = path.join(import.meta.dirname, '../..');

/** `BACKWAVE_APP_URL` may name an app that is being served already; else this file has it built and served. */
const servedApp = process.env.BACKWAVE_APP_URL;
const appUrl = servedApp ?? `http://127.0.0.1:${keptPort('BACKWAVE_APP_PORT')}`;
const harnessUrl = `http://127.0.0.1:${keptPort('BACKWAVE_HARNESS_PORT')}`;

export default defineConfig({
  testDir: import.meta.dirname,
  outputDir: path.join(root, 'test-results'),
  fullyParallel: false,
  workers: 1,
  // Where others keep the cores busy, what takes a second takes ten.
  timeout: 120_000,
  expect: { timeout: 40_000 },
  forbidOnly: true,
  retries: 0,
  reporter: [['list']],
  projects: [
    {
      name: 'audio',
      testMatch: 'audio-*.spec.ts',
      use: {
        baseURL: harnessUrl,
        launchOptions: launchOptions(AUTOPLAY)
      }
    },
    {
      name: 'page',
      testMatch: 'page-*.spec.ts',
      fullyParallel: true,
      // A mount that slides in costs a page as much as the sound: tests of motion ask for it.
      use: {
        baseURL: appUrl,
        actionTimeout: 60_000,
        contextOptions: { reducedMotion: 'reduce' },
        launchOptions: launchOptions(SHORT_LIVED)
      }
    }
  ],
  webServer: [
    ...(wants('audio')
      ? [
          {
            command: `node node_modules/vite/bin/vite.js --config tests/browser/harness/vite.config.ts --host 127.0.0.1 --port ${new URL(harnessUrl).port} --strictPort`,
            cwd: root,
            url: harnessUrl
          }
        ]
      : []),
    ...(servedApp === undefined && wants('page')
      ? [
          {
            command: `node src/cli/start.mjs --port ${new URL(appUrl).port}`,
            cwd: root,
            url: appUrl,
            timeout: 180_000
          }
        ]
      : [])
  ]
});

/** Whether the command line asks for this project; it asks for all of them when it names none. */
function wants(project: string): boolean {
  const named: string[] = [];
  let naming = false;
  for (const word of process.argv) {
    if (word.startsWith('--project=')) named.push(word.slice('--project='.length));
    else if (naming && !word.startsWith('-')) named.push(word);
    naming = word === '--project' || (naming && !word.startsWith('-'));
  }
  return named.length === 0 || named.includes(project);
}

/**
 * A free port, the same in every process: this file is read again by every worker, which inherits the environment
 * of the process that read it first.
 */
function keptPort(variable: string): number {
  const script =
    "const s = require('net').createServer().listen(0, '127.0.0.1', () => { console.log(s.address().port); s.close(); })";
  process.env[variable] ??= execFileSync(process.execPath, ['-e', script], { encoding: 'utf8' }).trim();
  return Number(process.env[variable]);
}
