import path from 'node:path';
import { defineConfig } from 'vite';

const root = import.meta.dirname;

/** Serves the modules of src/lib/audio and the scripts of this folder to the tests in a real browser. */
export default defineConfig({
  root,
  tsconfig: path.join(root, '../../../src/cli/tsconfig.json'),
  cacheDir: path.join(root, '../../../node_modules/.vite-harness'),
  // All at once at the start: a late discovery would reload the page in the middle of a test.
  optimizeDeps: { include: ['standardized-audio-context', 'fft.js'] },
  server: { fs: { allow: [path.join(root, '../../..')] } }
});
