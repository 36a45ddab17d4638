import js from '@eslint/js';
import prettier from 'eslint-config-prettier';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import path from 'node:path';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

/** The rooms of src/lib and the rooms each may import from: one-way doors only (DEVELOPERS.md). */
const doors = {
  units: [],
  numeric: ['units'],
  acoustics: ['units', 'numeric'],
  waves: ['units', 'numeric', 'acoustics'],
  sounds: ['units', 'numeric'],
  listening: ['units', 'numeric'],
  worker: ['units', 'numeric', 'acoustics', 'waves', 'sounds', 'listening'],
  audio: ['units', 'numeric', 'sounds', 'listening'],
  plot: ['units', 'numeric'],
  bench: ['units', 'numeric', 'acoustics', 'waves', 'sounds', 'listening', 'worker', 'audio', 'plot'],
  routes: ['bench'],
  cli: ['units', 'numeric', 'acoustics', 'waves', 'sounds', 'listening', 'bench']
};

/** Packages that belong to some rooms only. */
const keptPackages = {
  'standardized-audio-context': ['audio'],
  'd3-scale': ['plot'],
  'd3-shape': ['plot'],
  'fft.js': ['numeric'],
  'idb-keyval': ['bench'],
  valibot: ['bench'],
  svelte: ['plot', 'bench', 'routes']
};

const root = import.meta.dirname;

/** The room a file of src stands in, or null outside the house. */
function roomOf(file) {
  const parts = path.relative(path.join(root, 'src'), file).split(path.sep);
  if (parts[0] === 'lib') return parts[1].replace(/\.[jt]s$/, '');
  return parts[0] in doors ? parts[0] : null;
}

/** @type {import('eslint').Rule.RuleModule} */
const oneWayDoors = {
  meta: { type: 'problem', schema: [], messages: { shut: '{{ from }} may not import from {{ to }}' } },
  create(context) {
    const from = roomOf(context.filename);
    if (!from) return {};
    const check = (node) => {
      const name = node.source?.value;
      if (typeof name !== 'string') return;
      const target = name.startsWith('$lib')
        ? path.join(root, 'src', name.slice(1))
        : name.startsWith('.')
          ? path.resolve(path.dirname(context.filename), name)
          : null;
      if (target) {
        const to = roomOf(target);
        if (to && to !== from && !doors[from].includes(to))
          context.report({ node, messageId: 'shut', data: { from, to } });
        return;
      }
      const kept = Object.keys(keptPackages).find((p) => name === p || name.startsWith(`${p}/`));
      if (kept && !keptPackages[kept].includes(from))
        context.report({ node, messageId: 'shut', data: { from, to: kept } });
    };
    return {
      ImportDeclaration: check,
      ExportNamedDeclaration: check,
      ExportAllDeclaration: check,
      ImportExpression: check
    };
  }
};

export default ts.config(
  { ignores: ['build/', '.svelte-kit/', 'node_modules/', 'test-results/', 'playwright-report/'] },
  js.configs.recommended,
  ...ts.configs.recommended,
  ...svelte.configs['flat/recommended'],
  prettier,
  ...svelte.configs['flat/prettier'],
  { languageOptions: { globals: { ...globals.browser, ...globals.node } } },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser, extraFileExtensions: ['.svelte'], svelteConfig } }
  },
  {
    files: ['src/**'],
    plugins: { backwave: { rules: { 'one-way-doors': oneWayDoors } } },
    rules: { 'backwave/one-way-doors': 'error' }
  },
  { rules: { 'no-undef': 'off', 'no-console': ['error', { allow: ['error', 'warn'] }], eqeqeq: 'error' } },
  { files: ['src/cli/**', 'tests/**'], rules: { 'no-console': 'off' } }
);
