import type { Environment } from 'vitest/runtime';

/** Compiles modules as for a page, so that effects run, and needs no page. */
export default {
  name: 'effects',
  viteEnvironment: 'client',
  setup: () => ({ teardown: () => undefined })
} satisfies Environment;
