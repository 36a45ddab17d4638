import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { root } from './root.mjs';

/**
 * @typedef {object} RunOptions
 * @property {Record<string, string | undefined>} [env] added to the environment
 * @property {boolean} [toStderr] what the program prints goes to stderr, so that stdout stays clean
 * @property {boolean} [quiet] what it prints is shown only if it fails
 * @property {boolean} [interactive] it may read what the user types
 */

/**
 * Runs a program in the checkout and waits for it. Arguments go to it as they are (no shell), so spaces in
 * paths are nothing special.
 * @param {string} program
 * @param {string[]} args
 * @param {RunOptions & { shell?: boolean }} [options]
 * @returns {Promise<number>} its exit code; 127 where it cannot be started
 */
export function run(program, args, options = {}) {
  return new Promise((resolve) => {
    const child = spawn(program, args, {
      cwd: root,
      env: { ...process.env, ...options.env },
      stdio: options.quiet
        ? ['ignore', 'pipe', 'pipe']
        : [options.interactive ? 0 : 'ignore', options.toStderr ? 2 : 1, 2],
      shell: options.shell ?? false
    });
    /** @type {Buffer[]} */
    const kept = [];
    child.stdout?.on('data', (part) => kept.push(part));
    child.stderr?.on('data', (part) => kept.push(part));
    // A terminal sends Ctrl+C to the child as well; a plain kill does not, so it is passed on.
    let stopped = false;
    const stop = () => {
      stopped = true;
      child.kill();
    };
    process.once('SIGTERM', stop);
    process.once('SIGINT', stop);
    const done = (/** @type {number} */ code) => {
      process.off('SIGTERM', stop);
      process.off('SIGINT', stop);
      resolve(code);
    };
    child.on('error', () => done(127));
    child.on('close', (code) => {
      if (stopped) process.exit(130);
      if (code !== 0) process.stderr.write(Buffer.concat(kept));
      done(code ?? 1);
    });
  });
}

/**
 * Runs a JavaScript file of a package with the Node that runs now: works on Windows too, where the
 * programs in node_modules/.bin are `.cmd` files that cannot be started without a shell.
 * @param {string} script path inside the checkout
 * @param {string[]} args
 * @param {RunOptions} [options]
 */
export function runScript(script, args, options) {
  return run(process.execPath, [path.join(root, script), ...args], options);
}

/**
 * Runs npm: its JavaScript file where it can be found, else through a shell.
 * @param {string[]} args plain words (they go through a shell at worst)
 * @param {RunOptions} [options]
 */
export function runNpm(args, options) {
  const script = npmScript(process.env.npm_execpath, process.execPath);
  if (script) return run(process.execPath, [script, ...args], options);
  return run('npm', args, { ...options, shell: process.platform === 'win32' });
}

/**
 * npm's own JavaScript file: the one that runs now, else the one that came with Node; null if neither.
 * @param {string | undefined} running `npm_execpath` of the environment
 * @param {string} node
 * @param {(file: string) => boolean} [exists]
 * @returns {string | null}
 */
export function npmScript(running, node, exists = existsSync) {
  const beside = path.dirname(node);
  const candidates = [
    ...(running && /npm-cli\.c?js$/.test(running) ? [running] : []),
    path.join(beside, 'node_modules', 'npm', 'bin', 'npm-cli.js'),
    path.join(beside, '..', 'lib', 'node_modules', 'npm', 'bin', 'npm-cli.js')
  ];
  return candidates.find((file) => exists(file)) ?? null;
}
