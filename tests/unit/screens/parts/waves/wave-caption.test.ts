import { expect, it } from 'vitest';
import { soundSpeed } from '../../../../../src/lib/acoustics/air.js';
import { hallCaption } from '../../../../../src/lib/screens/parts/waves/wave-caption.js';
import { fieldOnGrid } from '../../../../../src/lib/waves/field/field-on-grid.js';
import { mountProblem } from '../../../../../src/lib/waves/solve/mount-problem.js';
import { solveWave } from '../../../../../src/lib/waves/solve/wave-problem.js';
import { AIR, DEMO } from '../../../../helpers/demo-installations.js';

/** Pressure on the axis just in front of the cone and in the middle of the space behind it, in step with the cone's acceleration. */
function frontAndBack(name: string, frequency: number): [number, number] {
  const { problem, c } = mountProblem(DEMO[name], AIR, { accuracy: 'draft' });
  const grid = { plane: 'width', left: -0.001, right: 0.001, bottom: -0.012, top: 0.004 } as const;
  const { re } = fieldOnGrid(problem, solveWave(problem, (2 * Math.PI * frequency) / c), {
    ...grid,
    columns: 1,
    rows: 8
  });
  return [re[0], re[re.length - 1]];
}

it('says of a box what is seen: inside and in front have one colour, as long as it says so', () => {
  const box = DEMO['closed box'];
  const told = (frequency: number) =>
    hallCaption(box, frequency, AIR).includes('is thinned out, and the air in front');
  expect(told(100)).toBe(true);
  // A quarter of a wave is as long as the longest side inside, 42 mm.
  const end = soundSpeed(AIR) / (4 * 0.042);
  expect([told(0.99 * end), told(1.01 * end)]).toEqual([true, false]);
  for (const frequency of [100, 400, 1000, 0.99 * end]) {
    const [front, inside] = frontAndBack('closed box', frequency);
    expect(front, `${frequency} Hz`).toBeGreaterThan(0);
    expect(inside, `${frequency} Hz`).toBeGreaterThan(0);
  }
  expect(hallCaption(box, 400, AIR)).not.toContain('opposite');
});

it('says of an open mount what is seen: the back does the opposite of the front', () => {
  for (const name of ['free air', 'flat plate']) {
    expect(hallCaption(DEMO[name], 1000, AIR)).toContain('opposite');
    const [front, back] = frontAndBack(name, 1000);
    expect(front * back, name).toBeLessThan(0);
  }
});

it('says of a board what is seen: what comes down on it goes back, and nothing is below it', () => {
  const over = { ...DEMO['closed box'], board: { above: 0.02, facing: 'up' } } as const;
  expect(hallCaption(over, 1000, AIR)).toContain('The board throws back all that comes down on it.');
  expect(hallCaption(DEMO['closed box'], 1000, AIR)).not.toContain('board');
});
