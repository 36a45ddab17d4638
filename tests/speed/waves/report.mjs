import os from 'node:os';
import { findChromium } from '../../../src/cli/find-chromium.mjs';
import { loadTypescript } from '../../../src/cli/load-typescript.mjs';
import { plainTimes } from './plain-times.mjs';

/**
 * @typedef {import('./time-waves.js').ShellAsked} ShellAsked
 * @typedef {import('./time-waves.js').WaveTimes & { first: number }} Times
 * @typedef {import('./growth.js').Cost} Cost
 */

/** @type {(ShellAsked & { name: string, bar: number })[]} */
const SHELLS = [
  { name: 'full, central', accuracy: 'full', offset: 0, bar: 1 },
  { name: 'full, 30 mm off', accuracy: 'full', offset: 0.03, bar: 2.5 },
  { name: 'full, over a board', accuracy: 'full', offset: 0, above: 0.014, bar: 1.6 },
  {
    name: 'full, board, chassis, leak',
    accuracy: 'full',
    offset: 0,
    above: 0.014,
    asItRuns: true,
    bar: 3
  },
  { name: 'draft, central', accuracy: 'draft', offset: 0, bar: 0.1 },
  { name: 'draft, over a board', accuracy: 'draft', offset: 0, above: 0.014, bar: 0.25 },
  {
    name: 'draft, board, chassis, leak',
    accuracy: 'draft',
    offset: 0,
    above: 0.014,
    asItRuns: true,
    bar: 0.25
  },
  { name: 'draft, 30 mm off', accuracy: 'draft', offset: 0.03, bar: 0.25 }
];
/** What a second cone may cost: at most as much again. */
const TWO_BAR = 2;
/** Spacing of the mesh of `full` over that of each row of the table of growth. */
const DENSITIES = [0.4, 0.6, 0.8, 1, 1.5, 2];
const RUNS = 7;

/**
 * Prints what the wave solution takes here, in Node and in Chromium, and beside it the plain program in NumPy.
 * @param {{ once: boolean }} options `once`: a single run in Node, to see that it runs
 */
export async function reportWaves({ once }) {
  console.log(
    '\nThe wave solution of the reference shell (152 × 30 × 45 mm inside, closed ends, speaker in the roof), in seconds'
  );
  console.log(
    row('', 'unknowns', 'frequencies', 'matrices', 'solving', 'interpolation', 'whole', 'first run')
  );
  const runs = once ? 1 : RUNS;
  /** @type {{ typicalTimes: (asked: ShellAsked, runs: number) => Times, oneAndTwo: (accuracy: 'full' | 'draft', runs: number) => { one: number, two: number } }} */
  const { typicalTimes, oneAndTwo } = await loadTypescript('tests/speed/waves/time-waves.ts');
  // A draft goes the same way as a full solution, in a tenth of the time.
  const shells = SHELLS.filter(({ accuracy }) => !once || accuracy === 'draft');
  const inNode = shells.map((shell) => shown(`Node, ${shell.name}`, typicalTimes(shell, runs)));
  const accuracy = once ? 'draft' : 'full';
  const { one, two } = oneAndTwo(accuracy, runs);
  console.log(
    `Two cones, ${accuracy}, 40 mm to either side of the middle: ${two.toFixed(3)} s, the first alone ${one.toFixed(3)} s; ${(two / one).toFixed(2)} times as long (bar ${TWO_BAR}).`
  );
  if (once) {
    console.log('Full solutions, Chromium and the plain program in Python are left out of --once.');
    return reportGrowth(DENSITIES.slice(0, 2), 0);
  }
  const inChromium = await reportChromium();
  reportPlain(inChromium ?? inNode, inChromium ? 'Chromium' : 'Node');
  await reportGrowth(DENSITIES, 0.4);
}

/**
 * Times of one worker, of a pool, and the memory; null without a Chromium.
 * @returns {Promise<Times[] | null>}
 */
async function reportChromium() {
  const executable = findChromium();
  if (!executable) {
    console.log('There is no Chromium here: what it takes is left out.');
    return null;
  }
  const { ChromiumTimes } = await import('./in-chromium.mjs');
  const page = await ChromiumTimes.start(executable);
  try {
    /** @type {Times[]} */
    const all = [];
    for (const { name, bar, ...asked } of SHELLS)
      all.push(shown(`Chromium, ${name}`, await page.times(asked, RUNS), `bar ${bar}`));
    const cores = os.availableParallelism();
    console.log(`Chromium ${page.version}, ${cores} cores; "first run" is that of a new worker.`);
    const size = Math.min(4, cores);
    const [one, pool] = [middle(await page.demo(1, RUNS)), middle(await page.demo(size, RUNS))];
    console.log(
      `The four mounts of the demo bench, full: one worker ${one.toFixed(3)} s, a pool of ${size} ${pool.toFixed(3)} s (${(one / pool).toFixed(2)} times as fast).`
    );
    const memory = await page.memory(size, RUNS);
    console.log(
      memory
        ? `Memory of the tab with its ${size} workers while the demo bench is solved ${RUNS} times: ${memory.own.toFixed(0)} MB of its own at most, ${memory.before.toFixed(0)} MB of it before (bar 200); with the program that it shares with other tabs ${memory.all.toFixed(0)} MB.`
        : 'This system does not tell the memory of the tab.'
    );
    return all;
  } finally {
    await page.stop();
  }
}

/**
 * The plain program for as many frequencies as ours, and how many times as long it takes.
 * @param {Times[]} ours
 * @param {string} where
 */
function reportPlain(ours, where) {
  const plain = plainTimes();
  if (!plain)
    return console.log('There is no python3 with NumPy and SciPy here: the plain program is left out.');
  for (const { offset, nodes, prepare, each } of plain) {
    const index = SHELLS.findIndex(
      (shell) => shell.offset === offset && shell.accuracy === 'full' && shell.above === undefined
    );
    const { frequencies, whole: our } = ours[index];
    const solving = each * frequencies;
    const whole = prepare + solving;
    console.log(
      row(`NumPy, ${SHELLS[index].name}`, nodes, frequencies, prepare, solving, '', whole, '') +
        `${(whole / our).toFixed(1)} × ${where}`.padStart(18)
    );
  }
  console.log(
    'NumPy: the same scheme written plainly, LAPACK on all cores; nodes with the free edge; a few frequencies timed, so many counted.'
  );
}

/**
 * How cost grows with the mesh, and the exponents from row to row.
 * @param {number[]} densities
 * @param {number} seconds for each of the numbers
 */
async function reportGrowth(densities, seconds) {
  console.log('\nHow it grows: the reference shell, central, on finer and finer meshes, in Node, in seconds');
  console.log(row('', 'unknowns', 'matrices', 'exponent', 'one frequency', 'exponent'));
  /** @type {{ costOf: (density: number, seconds: number) => Cost }} */
  const { costOf } = await loadTypescript('tests/speed/waves/growth.ts');
  // What is compiled on the first call does not count.
  costOf(densities[0], seconds);
  /** @type {Cost[]} */
  const costs = [];
  for (const density of densities) {
    const cost = costOf(density, seconds);
    const last = costs.at(-1);
    costs.push(cost);
    const exponent = (/** @type {'matrices' | 'solution'} */ key) =>
      last ? slope([last, cost], key).toFixed(2) : '';
    const { unknowns, matrices, solution } = cost;
    console.log(
      row(
        `mesh of full × ${density}`,
        unknowns,
        matrices,
        exponent('matrices'),
        solution,
        exponent('solution')
      )
    );
  }
  console.log(
    `Over all: matrices ∝ N^${slope(costs, 'matrices').toFixed(2)}, one frequency ∝ N^${slope(costs, 'solution').toFixed(2)}.`
  );
}

/**
 * The exponent of the power law nearest to the costs, by least squares of the logarithms.
 * @param {Cost[]} costs
 * @param {'matrices' | 'solution'} key
 */
function slope(costs, key) {
  const points = costs.map((cost) => [Math.log(cost.unknowns), Math.log(cost[key])]);
  const mean = [0, 1].map((i) => points.reduce((sum, point) => sum + point[i], 0) / points.length);
  let [over, under] = [0, 0];
  for (const [x, y] of points) {
    over += (x - mean[0]) * (y - mean[1]);
    under += (x - mean[0]) ** 2;
  }
  return over / under;
}

/**
 * Prints a row of times and hands them on.
 * @param {string} name
 * @param {Times} times
 * @param {string} [after]
 */
function shown(name, times, after = '') {
  const { unknowns, frequencies, matrices, solving, interpolation, whole, first } = times;
  console.log(
    (
      row(name, unknowns, frequencies, matrices, solving, interpolation, whole, first) + after.padStart(18)
    ).trimEnd()
  );
  return times;
}

/**
 * A name and its numbers: whole ones as they are, seconds to the millisecond.
 * @param {string} name
 * @param {(number | string)[]} cells
 */
function row(name, ...cells) {
  const texts = cells.map((cell) =>
    typeof cell === 'string' || Number.isInteger(cell) ? String(cell) : cell.toFixed(3)
  );
  return `${name.padEnd(28)}${texts.map((text) => text.padStart(14)).join('')}`.trimEnd();
}

/** @param {number[]} values */
function middle(values) {
  return [...values].sort((a, b) => a - b)[values.length >> 1];
}
