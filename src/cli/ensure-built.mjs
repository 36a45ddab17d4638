import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { ensureInstalled } from './ensure-installed.mjs';
import { readText } from './read-text.mjs';
import { root } from './root.mjs';
import { runScript } from './run.mjs';

/** What the page is made of. */
const sources = [
  'src/app.html',
  'src/lib',
  'src/routes',
  'src/service-worker.ts',
  'static',
  'svelte.config.js',
  'vite.config.ts',
  'tsconfig.json',
  'package.json',
  'package-lock.json'
];

/**
 * A hash over the names and contents of everything the page is made of. By content and not by time: a
 * checkout of another branch and back changes times only.
 * @param {string} [folder]
 * @returns {string}
 */
export function sourceHash(folder = root) {
  const hash = createHash('sha256');
  for (const file of sources.flatMap((source) => filesOf(folder, source)).sort()) {
    const content = readFileSync(path.join(folder, file));
    hash.update(`${file}\0${content.length}\0`).update(content);
  }
  return hash.digest('hex');
}

/**
 * Is there no build, or one of other sources?
 * @param {string} [folder]
 */
export function needsBuild(folder = root) {
  if (readText(path.join(folder, 'build', 'index.html')) === null) return true;
  return readText(stampFile(folder)) !== sourceHash(folder);
}

/**
 * Builds the page where it is not built from the present sources; installs first where that is needed.
 * @param {{ force?: boolean }} [options]
 * @returns {Promise<boolean>} whether there is a build of the present sources now
 */
export async function ensureBuilt({ force = false } = {}) {
  if (!force && !needsBuild()) return true;
  if (!(await ensureInstalled())) return false;
  console.error('Building the page …');
  const hash = sourceHash();
  // A build that breaks off halfway must not pass for a whole one.
  rmSync(stampFile(root), { force: true });
  const code = await runScript('node_modules/vite/bin/vite.js', ['build'], {
    env: { NODE_ENV: 'production' },
    quiet: true
  });
  if (code === 0) {
    writeFileSync(stampFile(root), hash);
    return true;
  }
  console.error('The page could not be built: see above.');
  return false;
}

/** @param {string} folder */
function stampFile(folder) {
  return path.join(folder, 'build', '.built-from');
}

/**
 * The files at or under a path, as paths with `/`; none where there is nothing.
 * @param {string} folder
 * @param {string} name
 * @returns {string[]}
 */
function filesOf(folder, name) {
  try {
    return readdirSync(path.join(folder, name), { withFileTypes: true }).flatMap((entry) =>
      filesOf(folder, `${name}/${entry.name}`)
    );
  } catch (error) {
    const code = /** @type {NodeJS.ErrnoException} */ (error).code;
    if (code === 'ENOTDIR') return [name];
    if (code === 'ENOENT') return [];
    throw error;
  }
}
