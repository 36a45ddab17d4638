import { accessSync, constants, readdirSync, statSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';

/**
 * The path of a Chromium-like browser on this machine, or null: first `CHROMIUM_PATH`, then a Chromium without a window of
 * its own, then the usual places of Chromium, Chrome and Edge on this system, then what Playwright has downloaded before.
 *
 * @returns {string | null}
 */
export function findChromium() {
  return places().find(isExecutableFile) ?? null;
}

/** Every place worth looking at, best first. */
export function places() {
  const { CHROMIUM_PATH } = process.env;
  const named = CHROMIUM_PATH ? [CHROMIUM_PATH] : [];
  return [...named, ...shells(), ...installed(), ...downloaded()];
}

/**
 * Whether there is a Chromium without a window of its own, which opens a page at half the cost: the other makes the
 * pages of its address line as well.
 */
export function hasShell() {
  return shells().some(isExecutableFile);
}

function shells() {
  return [
    ...anywhere(['chromium-headless-shell']),
    ...downloads('chromium_headless_shell-', [
      'chrome-headless-shell-linux64/chrome-headless-shell',
      'chrome-linux/headless_shell',
      'chrome-headless-shell-win64/chrome-headless-shell.exe',
      'chrome-headless-shell-mac-arm64/chrome-headless-shell',
      'chrome-headless-shell-mac-x64/chrome-headless-shell'
    ])
  ];
}

function installed() {
  const home = os.homedir();
  if (process.platform === 'win32') {
    const { PROGRAMFILES, 'PROGRAMFILES(X86)': PROGRAMFILES_X86, LOCALAPPDATA } = process.env;
    const programs = [
      'Google/Chrome/Application/chrome.exe',
      'Chromium/Application/chrome.exe',
      'Microsoft/Edge/Application/msedge.exe'
    ];
    return [PROGRAMFILES, PROGRAMFILES_X86, LOCALAPPDATA].flatMap((root) =>
      root ? programs.map((program) => path.join(root, program)) : []
    );
  }
  if (process.platform === 'darwin') {
    const programs = ['Chromium', 'Google Chrome', 'Microsoft Edge'];
    return ['/Applications', path.join(home, 'Applications')].flatMap((root) =>
      programs.map((program) => path.join(root, `${program}.app`, 'Contents', 'MacOS', program))
    );
  }
  return anywhere([
    'chromium',
    'chromium-browser',
    'google-chrome',
    'google-chrome-stable',
    'microsoft-edge',
    'microsoft-edge-stable',
    'msedge'
  ]);
}

/**
 * Programs of these names in the usual folders and on the path.
 * @param {string[]} names
 */
function anywhere(names) {
  const folders = ['/usr/bin', '/usr/local/bin', '/snap/bin'];
  const onPath = (process.env.PATH ?? '').split(path.delimiter).filter((folder) => folder !== '');
  return names.flatMap((name) =>
    [...new Set([...folders, ...onPath])].map((folder) => path.join(folder, name))
  );
}

function downloaded() {
  return downloads('chromium-', [
    'chrome-linux/chrome',
    'chrome-linux64/chrome',
    'chrome-win/chrome.exe',
    'chrome-win64/chrome.exe',
    'chrome-mac/Chromium.app/Contents/MacOS/Chromium',
    'chrome-mac-arm64/Google Chrome for Testing.app/Contents/MacOS/Google Chrome for Testing',
    'chrome-mac-x64/Google Chrome for Testing.app/Contents/MacOS/Google Chrome for Testing'
  ]);
}

/**
 * The browsers in those folders of Playwright's cache whose names begin so, newest first.
 * @param {string} prefix
 * @param {string[]} programs
 */
function downloads(prefix, programs) {
  const cache = process.env.PLAYWRIGHT_BROWSERS_PATH ?? path.join(cacheFolder(), 'ms-playwright');
  return foldersIn(cache)
    .filter((folder) => folder.startsWith(prefix) && /^\d+$/.test(folder.slice(prefix.length)))
    .sort((a, b) => Number(b.slice(prefix.length)) - Number(a.slice(prefix.length)))
    .flatMap((folder) => programs.map((program) => path.join(cache, folder, program)));
}

function cacheFolder() {
  const home = os.homedir();
  if (process.platform === 'win32') return process.env.LOCALAPPDATA ?? path.join(home, 'AppData', 'Local');
  if (process.platform === 'darwin') return path.join(home, 'Library', 'Caches');
  return process.env.XDG_CACHE_HOME ?? path.join(home, '.cache');
}

/** @param {string} folder */
function foldersIn(folder) {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

/** @param {string} file */
function isExecutableFile(file) {
  try {
    accessSync(file, process.platform === 'win32' ? constants.F_OK : constants.X_OK);
    return statSync(file).isFile();
  } catch {
    return false;
  }
}
