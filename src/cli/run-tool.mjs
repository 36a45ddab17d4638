import { ensureChromium } from './ensure-chromium.mjs';
import { ensureInstalled } from './ensure-installed.mjs';
import { runScript } from './run.mjs';
import * as tools from './tools.mjs';

/** @typedef {(words: string[]) => Promise<number>} Tool takes the user's own words, gives the exit code */

/** @type {Record<string, Tool>} */
const byName = {
  dev: (words) => runScript(tools.vite, ['dev', '--host', '127.0.0.1', ...words], { interactive: true }),
  build: (words) => runScript(tools.vite, ['build', ...words]),
  format: (words) => runScript(tools.oxfmt, orAll(words)),
  lint: async (words) => {
    const codes = [];
    for (const [script, ...flags] of tools.linters)
      codes.push(await runScript(script, [...flags, ...orAll(words)]));
    return Math.max(...codes);
  },
  check: async (words) =>
    (await runScript(tools.svelteKit, ['sync'])) ||
    runScript(tools.svelteCheck, [...tools.svelteCheckFlags, ...words]),
  'test:unit': (words) => runScript(tools.vitest, ['run', ...words]),
  'test:browser': async (words) => {
    const chromium = await ensureChromium({ mayUseApt: false });
    if (!chromium) return 1;
    const args = ['test', '--config', 'tests/browser/playwright.config.ts', ...words];
    return runScript(tools.playwright, args, { env: { CHROMIUM_PATH: chromium } });
  }
};

/**
 * `npm run dev`, `lint` and the others that hand their words to a package's program: it is installed first where it is
 * not there yet, so that any of them can be the first one typed in a fresh clone.
 * @param {string[]} args the tool's name, then its words
 */
export async function main([name, ...words]) {
  process.exitCode = (await ensureInstalled()) ? await byName[name](words) : 1;
}

/**
 * The files that are named, else all there are.
 * @param {string[]} words
 */
function orAll(words) {
  return words.some((word) => !word.startsWith('-')) ? words : [...words, '.'];
}
