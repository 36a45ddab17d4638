import { expect, test } from 'vitest';
import type { SolvedWaves } from '../../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../../src/lib/waves/wave-solution.js';
import type { MountAsked } from '../../../../src/lib/workers/waves/wave-protocol.js';
import { WaveCache } from '../../../../src/lib/workers/waves/wave-cache.js';
import { AIR, DEMO } from '../../../helpers/demo-installations.js';

const installation = DEMO['closed box'];
const solved = solveMount(installation, AIR, { accuracy: 'draft' });

/** The same box in airs of different temperature: as many mounts as one likes. */
const mount = (temperatureC: number, accuracy: MountAsked['accuracy'] = 'draft'): MountAsked => ({
  installation,
  air: { temperatureC },
  accuracy
});

/** The solution with matrices of this weight. */
function weighing(megabytes: number): SolvedWaves {
  const { curve } = solved;
  const { problem } = curve;
  const statics = [{ a0: new Float64Array(megabytes * 6.25e4), a1: new Float64Array(0) }, null];
  const pairs = { ...problem.pairs, data: new Float64Array(megabytes * 6.25e4) };
  return { ...solved, curve: { ...curve, problem: { ...problem, statics, pairs } } };
}

test('twelve solutions are kept at full and eight drafts, and neither makes room for the other', () => {
  const cache = new WaveCache();
  for (let i = 0; i < 12; i++) cache.keepSolved(mount(i, 'full'), solved);
  for (let i = 0; i < 9; i++) cache.keepSolved(mount(i), solved);
  const kept = (accuracy: MountAsked['accuracy'], count: number) =>
    Array.from({ length: count }, (_, i) => cache.solved(mount(i, accuracy)) !== undefined);
  expect(kept('full', 12)).toEqual(new Array(12).fill(true));
  expect(kept('draft', 9)).toEqual([false, ...new Array(8).fill(true)]);
  expect(cache.holds.solved.length).toBe(20);
});

test('matrices are kept by weight: 20 MB at full and 4 MB for drafts, and the newest whatever it weighs', () => {
  const cache = new WaveCache();
  const kept = (accuracy: MountAsked['accuracy']) =>
    [0, 1, 2, 3].filter((i) => cache.meshed(mount(i, accuracy)) !== undefined);
  for (const i of [0, 1, 2, 3]) cache.keepSolved(mount(i, 'full'), weighing(6));
  expect(kept('full')).toEqual([1, 2, 3]);
  for (const i of [0, 1, 2, 3]) cache.keepSolved(mount(i), weighing(1.5));
  expect(kept('draft')).toEqual([2, 3]);
  cache.keepSolved(mount(0, 'full'), weighing(30));
  expect(kept('full')).toEqual([0]);
  // their solutions stay, without matrices
  const { curve, highest } = cache.solved(mount(3, 'full'))!;
  expect(curve.problem.statics).toEqual([null, null]);
  expect(curve.problem.pairs.data.length).toBe(0);
  expect([curve.states, highest]).toEqual([solved.curve.states, solved.highest]);
});

test('solutions at one frequency are told apart by frequency and mount, and 32 are kept', () => {
  const cache = new WaveCache();
  const { problem, states } = solved.curve;
  const moment = (i: number) => ({ problem, state: states[i] });
  cache.keepMoment(mount(20), 100, moment(0));
  cache.keepMoment(mount(20), 200, moment(1));
  cache.keepMoment(mount(21), 100, moment(2));
  expect(cache.moment(mount(20), 100)!.state).toBe(states[0]);
  expect(cache.moment(mount(20), 200)!.state).toBe(states[1]);
  expect(cache.moment(mount(21), 100)!.state).toBe(states[2]);
  expect(cache.moment(mount(20, 'full'), 100)).toBeUndefined();
  expect(cache.moment(mount(20), 100)!.problem.statics).toEqual(problem.statics.map(() => null));
  for (let i = 0; i < 32; i++) cache.keepMoment(mount(20), 300 + i, moment(0));
  expect(cache.moment(mount(21), 100)).toBeUndefined();
  expect(cache.moment(mount(20), 300)).toBeDefined();
});
