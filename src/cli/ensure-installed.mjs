import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { readText } from './read-text.mjs';
import { root } from './root.mjs';
import { runNpm } from './run.mjs';

/** @typedef {Record<string, { version?: string, optional?: boolean }>} LockedPackages */

/**
 * What node_modules must have been made from: the lock file, and the machine it was made for.
 * @param {string} lockText
 */
export function installStamp(lockText) {
  const machine = `${process.platform} ${process.arch}`;
  return createHash('sha256').update(machine).update(lockText.replaceAll('\r\n', '\n')).digest('hex');
}

/**
 * Does node_modules (by the lock file that npm keeps inside it) hold exactly what the lock file asks for?
 * Packages for other machines are optional and may be missing.
 * @param {string} lockText
 * @param {string | null} installedText node_modules/.package-lock.json
 */
export function holdsWhatIsLocked(lockText, installedText) {
  if (installedText === null) return false;
  try {
    /** @type {LockedPackages} */
    const locked = JSON.parse(lockText).packages;
    /** @type {LockedPackages} */
    const installed = JSON.parse(installedText).packages;
    return (
      Object.entries(locked).every(
        ([key, { version, optional }]) =>
          key === '' || (installed[key] ? installed[key].version === version : optional === true)
      ) && Object.keys(installed).every((key) => key in locked)
    );
  } catch {
    return false;
  }
}

/**
 * Must the packages be installed? Answered without the network: by the stamp of the last time, else by
 * what npm itself says is there.
 * @param {string} [folder]
 */
export function needsInstall(folder = root) {
  const lock = readText(path.join(folder, 'package-lock.json')) ?? '';
  if (readText(path.join(folder, 'node_modules', '.package-lock.json')) === null) return true;
  if (readText(stampFile(folder)) === installStamp(lock)) return false;
  if (!holdsWhatIsLocked(lock, readText(path.join(folder, 'node_modules', '.package-lock.json'))))
    return true;
  writeStamp(folder);
  return false;
}

/**
 * Installs the locked packages where they are not there yet.
 * @param {{ toStderr?: boolean }} [options]
 * @returns {Promise<boolean>} whether they are there now
 */
export async function ensureInstalled({ toStderr = false } = {}) {
  if (!needsInstall()) return true;
  console.error('Installing the packages of package-lock.json (once) …');
  const code = await runNpm(['ci', '--include=dev', '--no-audit', '--no-fund'], { toStderr });
  if (code === 0) {
    writeStamp(root);
    return true;
  }
  console.error('The packages could not be installed: is there a network, and does npm work? See above.');
  return false;
}

/** @param {string} folder */
function stampFile(folder) {
  return path.join(folder, 'node_modules', '.backwave-installed');
}

/** @param {string} folder */
function writeStamp(folder) {
  writeFileSync(stampFile(folder), installStamp(readText(path.join(folder, 'package-lock.json')) ?? ''));
}
