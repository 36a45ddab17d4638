import path from 'node:path';
import { root } from './root.mjs';

/** @typedef {{ room: string, folder: string }} Place a room, and the folder in it (`.` where there is none) */

/** What every room may use. */
const ground = ['units', 'numeric'];
const pure = ['acoustics', 'waves', 'sounds', 'listening', 'fitting'];
const state = [...pure, 'workers', 'audio', 'format', 'file', 'evaluation'];

/**
 * The rooms of src/lib and the rooms each may import from, besides the ground: one-way doors only (DEVELOPERS.md). A room
 * `a/*` is each folder of `a`, for itself.
 * @type {Record<string, string[]>}
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
 * @type {Record<string, Record<string, string[]>>}
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

/**
 * Packages that belong to some rooms only.
 * @type {Record<string, string[]>}
 */
const keptPackages = {
  'standardized-audio-context': ['audio'],
  'd3-scale': ['plot'],
  'd3-shape': ['plot'],
  'fft.js': ['numeric'],
  'idb-keyval': ['bench'],
  valibot: ['file'],
  svelte: ['plot', 'drawing', 'bench', 'screens', 'routes']
};

/**
 * Where a file of src stands; null outside the house.
 * @param {string} file
 * @returns {Place | null}
 */
function roomOf(file) {
  const parts = path.relative(path.join(root, 'src'), file).split(path.sep);
  if (parts[0] !== 'lib') return parts[0] in doors ? { room: parts[0], folder: '.' } : null;
  return { room: parts[1].replace(/\.[jt]s$/, ''), folder: parts.length > 3 ? parts[2] : '.' };
}

/**
 * The doors that are open from a room, and for rooms with rooms from its folder.
 * @param {Place} place
 */
function openFrom({ room, folder }) {
  return [...ground, ...(doors[`${room}/${folder}`] ?? doors[`${room}/*`] ?? doors[room] ?? [])];
}

/**
 * Whether one place of the house may import from another.
 * @param {Place} from
 * @param {Place} to
 */
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

/** @param {Place} place */
function nameOf({ room, folder }) {
  return folder === '.' ? room : `${room}/${folder}`;
}

/** @type {import('eslint').Rule.RuleModule} */
const oneWayDoors = {
  meta: { type: 'problem', schema: [], messages: { shut: '{{ from }} may not import from {{ to }}' } },
  create(context) {
    const from = roomOf(context.filename);
    if (!from) return {};
    const check = (
      /** @type {import('eslint').Rule.Node & { source?: { value?: unknown } | null }} */ node
    ) => {
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

/** The rule as both linters take it. */
export default { meta: { name: 'backwave' }, rules: { 'one-way-doors': oneWayDoors } };
