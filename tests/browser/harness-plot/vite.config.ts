import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';

export default defineConfig({
  root: import.meta.dirname,
  plugins: [svelte()],
  server: { host: '127.0.0.1' },
  cacheDir: '../../../node_modules/.vite-harness-plot'
});
