import path from 'node:path';
import { root } from './root.mjs';

/**
 * Loads a TypeScript module of the checkout with all it imports, in this process. Vite is in the house for
 * the page anyway, and its loader takes a third of a second.
 * @template T
 * @param {string} file path inside the checkout
 * @returns {Promise<T>}
 */
export async function loadTypescript(file) {
  const { runnerImport } = await import('vite');
  const { module } = await runnerImport(path.join(root, file), {
    configFile: false,
    envDir: false,
    logLevel: 'error',
    root,
    // The one that needs nothing made: the root's extends a file that only Kit writes.
    tsconfig: path.join(root, 'src/cli/tsconfig.json')
  });
  return /** @type {T} */ (module);
}
