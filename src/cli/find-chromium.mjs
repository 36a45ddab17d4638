import { accessSync, constants, readdirSync, statSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';

/**
 * The path of a Chromium-like browser on this machine, or null: first `CHROMIUM_PATH`, then the usual places of
 * Chromium, Chrome and Edge on this system, then what Playwright has downloaded before.
 *
 * @returns {string | null}
 */
export function findChromium() {
  return places().find(isExecutableFile) ?? null;
}

/** Every place worth looking at, best first. */
function places() {
  const { CHROMIUM_PATH } = process.env;
  return [...(CHROMIUM_PATH ? [CHROMIUM_PATH] : []), ...installed(), ...downloaded()];
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
  const names = [
    'chromium',
    'chromium-browser',
    'google-chrome',
    'google-chrome-stable',
    'microsoft-edge',
    'microsoft-edge-stable',
    'msedge'
  ];
  const folders = ['/usr/bin', '/usr/local/bin', '/snap/bin'];
  const onPath = (process.env.PATH ?? '').split(path.delimiter).filter((folder) => folder !== '');
  return names.flatMap((name) =>
    [...new Set([...folders, ...onPath])].map((folder) => path.join(folder, name))
  );
}

/** The browsers in Playwright's cache, newest first. */
function downloaded() {
  const cache = process.env.PLAYWRIGHT_BROWSERS_PATH ?? path.join(cacheFolder(), 'ms-playwright');
  const programs = [
    'chrome-linux/chrome',
    'chrome-linux64/chrome',
    'chrome-win/chrome.exe',
    'chrome-win64/chrome.exe',
    'chrome-mac/Chromium.app/Contents/MacOS/Chromium',
    'chrome-mac-arm64/Google Chrome for Testing.app/Contents/MacOS/Google Chrome for Testing',
    'chrome-mac-x64/Google Chrome for Testing.app/Contents/MacOS/Google Chrome for Testing'
  ];
  const revision = (/** @type {string} */ folder) => Number(folder.replace('chromium-', ''));
  return foldersIn(cache)
    .filter((folder) => /^chromium-\d+$/.test(folder))
    .sort((a, b) => revision(b) - revision(a))
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
