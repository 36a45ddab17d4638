import { readFileSync } from 'node:fs';

/**
 * A text file's content; null where there is none.
 * @param {string} file
 * @returns {string | null}
 */
export function readText(file) {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return null;
  }
}
