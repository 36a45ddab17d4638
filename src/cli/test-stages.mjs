import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { atATime } from './at-a-time.mjs';
import { ensureBuilt } from './ensure-built.mjs';
import { ensureChromium } from './ensure-chromium.mjs';
import { host, listen } from './listen.mjs';
import { readText } from './read-text.mjs';
import { root } from './root.mjs';
import { runScript } from './run.mjs';
import { staticServer } from './static-server.mjs';
import { addCounts, countOne, countPlaywright, countVitest } from './test-counts.mjs';
import * as tools from './tools.mjs';

/** @typedef {import('./test-counts.mjs').Counts} Counts */

/**
 * @typedef {object} Stage
 * @property {string} name as `--only` takes it
 * @property {string} what
 * @property {boolean} [static] it reads the files and runs nothing of them, on one core: may run beside others
 * @property {() => Promise<unknown>} [prepare] what it needs, on one core: may be made while the static checks run
 * @property {(options: { installBrowser: boolean }) => Promise<Counts>} run
 */

/** @type {Stage[]} */
export const stages = [
  // The longest first, so that the cores end together.
  {
    name: 'types',
    what: 'types of program, page and tests (svelte-check, tsc)',
    static: true,
    run: checkTypes
  },
  {
    name: 'lint',
    what: 'the rules of the house, one-way doors among them (oxlint, ESLint)',
    static: true,
    run: async () => {
      const checks = await Promise.all(
        tools.linters.map(([script, ...flags]) => check(script, [...flags, '.']))
      );
      return checks.reduce(addCounts);
    }
  },
  {
    name: 'format',
    what: 'every file is formatted (oxfmt)',
    static: true,
    run: () => check(tools.oxfmt, ['--check', '--threads=1', '.'])
  },
  { name: 'unit', what: 'unit and validation tests (vitest)', run: runVitest },
  {
    name: 'sound',
    what: 'the audio graph in a real Chromium (Playwright)',
    run: (options) => runPlaywright('audio', pageWorkers(), options)
  },
  {
    name: 'page',
    what: 'the built page in a real Chromium (Playwright)',
    prepare: () => onACore(() => ensureBuilt()),
    run: (options) => runPlaywright('page', pageWorkers(), options)
  }
];

/** Static checks use one core each: as many at a time as there are cores. */
const onACore = atATime(os.availableParallelism());

/**
 * A check that is one program; what it prints is shown only if it fails, so that those at its side do not talk across.
 * @param {string} script
 * @param {string[]} args
 */
async function check(script, args) {
  return countOne((await onACore(() => runScript(script, args, { quiet: true }))) === 0);
}

/** The page and program by the root's tsconfig, then every folder that has a tsconfig of its own. */
async function checkTypes() {
  const synced = await check(tools.svelteKit, ['sync']);
  const checks = await Promise.all([
    check(tools.svelteCheck, [...tools.svelteCheckFlags, '--output', 'human']),
    ...ownProjects(root).map((project) => check(tools.tsc, ['--noEmit', '-p', project]))
  ]);
  return checks.reduce(addCounts, synced);
}

/**
 * Every tsconfig below src and tests: what runs neither in a page nor in Node, such as an audio worklet.
 * @param {string} folder
 * @returns {string[]} paths inside the folder
 */
export function ownProjects(folder) {
  return ['src', 'tests']
    .flatMap((top) =>
      readdirSync(path.join(folder, top), { recursive: true }).map((name) => path.join(top, String(name)))
    )
    .filter((name) => /^tsconfig(\.[\w-]+)?\.json$/.test(path.basename(name)))
    .sort();
}

async function runVitest() {
  return withReport(async (report) => {
    const args = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
    const code = await runScript(tools.vitest, args);
    return countVitest(readText(report), code);
  });
}

/**
 * As many pages at a time as there are cores; more than four would fight for the rest of the machine.
 * @param {number} [cores]
 */
export function pageWorkers(cores = os.availableParallelism()) {
  return Math.max(1, Math.min(4, cores));
}

/**
 * @param {'audio' | 'page'} project of the Playwright configuration
 * @param {number} workers how many tests run at a time
 * @param {{ installBrowser: boolean }} options
 */
async function runPlaywright(project, workers, { installBrowser }) {
  if (!(await ensureBuilt())) return countOne(false);
  const chromium = await ensureChromium({ mayUseApt: installBrowser });
  if (!chromium) return countOne(false);
  const server = staticServer(path.join(root, 'build'));
  const port = await listen(server, 0);
  const counts = await withReport(async (report) => {
    const args = ['test', '--config', 'tests/browser/playwright.config.ts', '--reporter=list,json'];
    args.push(`--project=${project}`, `--workers=${workers}`);
    const env = {
      BACKWAVE_APP_URL: `http://${host}:${port}`,
      CHROMIUM_PATH: chromium,
      PLAYWRIGHT_JSON_OUTPUT_FILE: report,
      PLAYWRIGHT_HTML_OPEN: 'never'
    };
    const code = await runScript(tools.playwright, args, { env });
    return countPlaywright(readText(report), code);
  });
  server.closeAllConnections();
  server.close();
  return counts;
}

/**
 * Hands a file name for a report to a stage, and cleans up after it.
 * @param {(report: string) => Promise<Counts>} stage
 * @returns {Promise<Counts>}
 */
async function withReport(stage) {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'backwave-report-'));
  try {
    return await stage(path.join(folder, 'report.json'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
