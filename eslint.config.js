import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import path from 'node:path';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

/** What every room may use. */
const ground = ['units', 'numeric'];
const pure = ['acoustics', 'waves', 'sounds', 'listening', 'fitting'];
const state = [...pure, 'workers', 'audio', 'format', 'file', 'evaluation'];

/**
 * The rooms of src/lib and the rooms each may import from, besides the ground: one-way doors only (DEVELOPERS.md). A room
 * `a/*` is each folder of `a`, for itself.
 */
const doors = {
  units: [],
  numeric: [],
  acoustics: [],
  waves: ['acoustics'],
  sounds: [],
  fitting: ['acoustics'],
  listening: [],
  workers: pure,
  audio: ['sounds', 'listening'],
  format: [],
  plot: ['format'],
  drawing: ['acoustics', 'format', 'fitting'],
  file: ['acoustics', 'sounds', 'fitting'],
  evaluation: ['acoustics', 'waves', 'workers', 'listening', 'sounds', 'format', 'fitting', 'file'],
  export: ['evaluation', 'file', 'listening', 'sounds', 'plot'],
  bench: state,
  'screens/parts': [...state, 'export', 'bench', 'plot', 'drawing'],
  'screens/*': [...state, 'export', 'bench', 'plot', 'drawing', 'screens/parts'],
  'screens/lab': [...state, 'export', 'bench', 'plot', 'drawing', 'screens'],
  routes: ['screens/lab'],
  cli: [...pure, 'format', 'file', 'evaluation', 'export']
};

/**
 * Rooms that have rooms: which of their folders each folder may import from. `.` are the files that stand in no folder. What
 * is not named here may not be imported.
 */
const inner = {
  acoustics: {
    '.': ['speaker', 'mounts'],
    speaker: ['.'],
    mounts: ['.', 'speaker'],
    rule: ['.', 'speaker', 'mounts'],
    openings: [],
    figures: ['.', 'rule']
  },
  waves: {
    '.': ['mesh', 'assembly', 'solve', 'field', 'curve'],
    mesh: [],
    assembly: ['mesh'],
    solve: ['mesh', 'assembly'],
    field: ['mesh', 'assembly', 'solve'],
    curve: ['solve', 'field']
  },
  workers: { link: [], sound: ['link'], waves: ['link'] },
  plot: {
    // What is drawn, as plain data: every other folder takes it.
    '.': [],
    colour: [],
    scales: ['.'],
    axes: ['scales'],
    labels: ['.', 'scales'],
    marks: ['.', 'scales', 'labels'],
    readout: ['.', 'scales', 'axes', 'labels', 'marks'],
    pictures: ['.', 'colour', 'scales', 'axes', 'labels', 'marks', 'readout']
  },
  file: { '.': ['json', 'versions'], json: [], versions: ['json'] },
  bench: {
    '.': [],
    keep: ['.'],
    sounding: ['.'],
    air: ['.'],
    trials: ['.', 'sounding'],
    votes: ['.', 'sounding', 'trials'],
    fit: ['.'],
    script: ['.']
  }
};

/** Packages that belong to some rooms only. */
const keptPackages = {
  'standardized-audio-context': ['audio'],
  'd3-scale': ['plot'],
  'd3-shape': ['plot'],
  'fft.js': ['numeric'],
  'idb-keyval': ['bench'],
  valibot: ['file'],
  svelte: ['plot', 'drawing', 'bench', 'screens', 'routes']
};

const root = import.meta.dirname;

/** The room a file of src stands in and the folder within it, or null outside the house. */
function roomOf(file) {
  const parts = path.relative(path.join(root, 'src'), file).split(path.sep);
  if (parts[0] !== 'lib') return parts[0] in doors ? { room: parts[0], folder: '.' } : null;
  return { room: parts[1].replace(/\.[jt]s$/, ''), folder: parts.length > 3 ? parts[2] : '.' };
}

/** The doors that are open from a room, and for rooms with rooms from its folder. */
function openFrom({ room, folder }) {
  return [...ground, ...(doors[`${room}/${folder}`] ?? doors[`${room}/*`] ?? doors[room] ?? [])];
}

/** Whether one place of the house may import from another. */
function mayImport(from, to) {
  if (from.room === to.room && from.folder === to.folder) return true;
  if (from.room === to.room && inner[from.room])
    return inner[from.room][from.folder]?.includes(to.folder) ?? false;
  const open = openFrom(from);
  return (
    (from.room === to.room && !doors[`${from.room}/*`]) ||
    open.includes(to.room) ||
    open.includes(`${to.room}/${to.folder}`)
  );
}

function nameOf({ room, folder }) {
  return folder === '.' ? room : `${room}/${folder}`;
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
        if (to && !mayImport(from, to))
          context.report({ node, messageId: 'shut', data: { from: nameOf(from), to: nameOf(to) } });
        return;
      }
      const kept = Object.keys(keptPackages).find((p) => name === p || name.startsWith(`${p}/`));
      if (kept && !keptPackages[kept].includes(from.room))
        context.report({ node, messageId: 'shut', data: { from: nameOf(from), to: kept } });
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
