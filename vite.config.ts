import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  plugins: [sveltekit()],
  worker: { format: 'es' },
  test: {
    include: ['tests/unit/**/*.test.ts', 'tests/validation/**/*.test.ts'],
    environment: 'node',
    // Hardly a test keeps state: with one set of modules for all, and a thread a core, they take less than half the time.
    isolate: false,
    pool: 'threads',
    maxWorkers: '100%',
    // A mount is solved in a second alone, in many where other work shares slow cores.
    testTimeout: 30_000
  }
});
