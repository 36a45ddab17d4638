import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  plugins: [sveltekit()],
  worker: { format: 'es' },
  test: {
    include: ['tests/unit/**/*.test.ts', 'tests/validation/**/*.test.ts'],
    environment: 'node',
    // Tests take back what they put into globals, so modules can be shared, a thread a core: less than half the time.
    isolate: false,
    pool: 'threads',
    maxWorkers: '100%',
    // A mount is solved in a second alone, in many where other work shares slow cores.
    testTimeout: 30_000
  }
});
