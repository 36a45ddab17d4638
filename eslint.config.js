import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import oneWayDoors from './src/cli/one-way-doors.mjs';
import svelteConfig from './svelte.config.js';

export default ts.config(
  // The others are looked at by oxlint (.oxlintrc.json), which cannot read a component.
  { ignores: ['build/', '.svelte-kit/', 'test-results/', '**/*.{ts,js,mjs}', '!**/*.svelte.ts'] },
  js.configs.recommended,
  ...ts.configs.recommended,
  ...svelte.configs['flat/recommended'],
  { languageOptions: { globals: { ...globals.browser, ...globals.node } } },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser, extraFileExtensions: ['.svelte'], svelteConfig } }
  },
  {
    files: ['src/**'],
    plugins: { backwave: oneWayDoors },
    rules: { 'backwave/one-way-doors': 'error' }
  },
  { rules: { 'no-undef': 'off', 'no-console': ['error', { allow: ['error', 'warn'] }], eqeqeq: 'error' } },
  { files: ['tests/**'], rules: { 'no-console': 'off' } }
);
