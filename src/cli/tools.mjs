/** Where the packages' own programs are, inside the checkout. */
export const playwright = 'node_modules/@playwright/test/cli.js';
export const oxfmt = 'node_modules/oxfmt/bin/oxfmt';
export const svelteCheck = 'node_modules/svelte-check/bin/svelte-check';
export const svelteKit = 'node_modules/@sveltejs/kit/svelte-kit.js';
/** TypeScript 7, a program of the machine (decision 34). */
export const tsc = 'node_modules/@typescript/native/bin/tsc';
export const vite = 'node_modules/vite/bin/vite.js';
export const vitest = 'node_modules/vitest/vitest.mjs';

/** What svelte-check is asked, by `npm run check` and by `npm test`. */
export const svelteCheckFlags = ['--tsconfig', './tsconfig.json', '--fail-on-warnings', '--tsgo'];

/**
 * The linters and what each is asked, by `npm run lint` and by `npm test`: oxlint looks at the scripts, ESLint at the
 * components, which oxlint cannot read (decision 35). Each passes over what is the other's.
 */
export const linters = [
  ['node_modules/oxlint/bin/oxlint', '--deny-warnings', '--no-error-on-unmatched-pattern'],
  ['node_modules/eslint/bin/eslint.js', '--max-warnings', '0', '--no-warn-ignored']
];
