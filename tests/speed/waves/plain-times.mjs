import { spawnSync } from 'node:child_process';
import path from 'node:path';

/**
 * What the plain program (tests/reference/waves-plain.py) takes on this machine for the reference shell.
 * @typedef {{ offset: number, nodes: number, prepare: number, each: number }} PlainTimes in seconds
 */

/**
 * Times the plain program in Python; null where there is no python3 with NumPy and SciPy.
 * @returns {PlainTimes[] | null}
 */
export function plainTimes() {
  if (python(['-c', 'import numpy, scipy']) === null) return null;
  const script = path.join(import.meta.dirname, '../../reference/waves-plain.py');
  const out = python([script, '--time']);
  if (out === null) throw new Error(`${script} --time failed`);
  return JSON.parse(out);
}

/** @param {string[]} args */
function python(args) {
  const { status, stdout } = spawnSync('python3', args, { encoding: 'utf8' });
  return status === 0 ? stdout : null;
}
