import { existsSync } from 'node:fs';
import { findChromium, hasShell } from './find-chromium.mjs';
import { run, runScript } from './run.mjs';

/**
 * @typedef {object} Machine
 * @property {boolean} isRoot
 * @property {boolean} isCi
 * @property {boolean} hasApt
 */

/** @returns {Machine} */
function thisMachine() {
  return {
    isRoot: process.getuid?.() === 0,
    isCi: process.env.CI === 'true' || process.env.CI === '1',
    hasApt: existsSync('/usr/bin/apt-get')
  };
}

/**
 * The ways to get a Chromium, in the order to try them. The system is touched (apt) only as root, and only
 * in continuous integration or where it was asked for.
 * @param {Machine} machine
 * @param {boolean} mayUseApt
 * @returns {('apt' | 'playwright')[]}
 */
export function waysToInstall({ isRoot, isCi, hasApt }, mayUseApt) {
  const apt = hasApt && isRoot && (isCi || mayUseApt);
  if (!apt) return ['playwright'];
  return isCi ? ['apt', 'playwright'] : ['playwright', 'apt'];
}

/**
 * The path of a Chromium, Chrome or Edge; installs one where there is none. Says in one sentence on stderr
 * if that does not succeed.
 * @param {{ mayUseApt: boolean }} options
 * @returns {Promise<string | null>}
 */
export async function ensureChromium({ mayUseApt }) {
  const found = findChromium();
  const machine = thisMachine();
  const ways = waysToInstall(machine, mayUseApt);
  if (found) {
    if (process.env.CHROMIUM_PATH || hasShell() || !machine.isCi || ways[0] !== 'apt') return found;
    console.error('Installing by apt a Chromium without a window of its own, which is faster …');
    await installByApt(['chromium-headless-shell']);
    return findChromium();
  }
  for (const way of ways) {
    console.error(`No Chromium found; installing one by ${way} …`);
    // Not every system has the first as a package of its own.
    if (way === 'apt') await installByApt(['chromium-headless-shell'], ['chromium']);
    else await runScript('node_modules/@playwright/test/cli.js', ['install', '--only-shell', 'chromium']);
    const installed = findChromium();
    if (installed) return installed;
  }
  console.error(
    'There is no Chromium, Chrome or Edge and none could be installed: install one, or set CHROMIUM_PATH to it.'
  );
  return null;
}

/**
 * Installs the first of these lists of packages that can be installed.
 * @param {...string[]} choices
 */
async function installByApt(...choices) {
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  if ((await run('apt-get', ['update', '-q'], { env })) !== 0) return;
  for (const packages of choices)
    if (
      (await run('apt-get', ['install', '-y', '-q', '--no-install-recommends', ...packages], { env })) === 0
    )
      return;
}
