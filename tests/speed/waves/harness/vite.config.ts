import path from 'node:path';
import { defineConfig } from 'vite';

const root = import.meta.dirname;
const checkout = path.join(root, '../../../..');

/** Serves the modules of src/lib and the scripts of this folder to the browser in which they are timed. */
export default defineConfig({
  root,
  tsconfig: path.join(checkout, 'src/cli/tsconfig.json'),
  cacheDir: path.join(checkout, 'node_modules/.vite-speed'),
  server: { fs: { allow: [checkout] } }
});
