import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';
import { LongestFirst } from './tests/helpers/longest-first.js';

export default defineConfig(({ isSsrBuild }) => ({
  plugins: [sveltekit()],
  worker: { format: 'es' },
  build: {
    // What the page begins with is one file, not fifty that wait for each other; what comes later stays apart.
    rolldownOptions: {
      output: isSsrBuild ? {} : { codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] } }
    }
  },
  test: {
    // Tests take back what they put into globals, so modules can be shared, a thread a core: less than half the time.
    isolate: false,
    pool: 'threads',
    maxWorkers: '100%',
    sequence: { sequencer: LongestFirst },
    // A mount is solved in a second alone, in many where other work shares slow cores.
    testTimeout: 30_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'pure',
          include: ['tests/unit/**/*.test.ts', 'tests/validation/**/*.test.ts'],
          exclude: ['**/*.svelte.test.ts'],
          environment: 'node'
        }
      },
      {
        // State with effects, as a page has it: on a server, Svelte runs none.
        extends: true,
        resolve: { conditions: ['browser'] },
        test: {
          name: 'effects',
          include: ['tests/unit/**/*.svelte.test.ts'],
          environment: './tests/helpers/effects-environment.ts'
        }
      }
    ]
  }
}));
