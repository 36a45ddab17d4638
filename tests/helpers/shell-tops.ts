import type { Installation } from '../../src/lib/acoustics/installation.js';
import { outlineLength, outlineWidth } from '../../src/lib/acoustics/outline.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { complexArray } from '../../src/lib/numeric/complex-array.js';
import { levelDb } from '../../src/lib/numeric/level-db.js';
import { evaluateFit, rationalFit } from '../../src/lib/numeric/rational-fit.js';
import { transfer } from '../../src/lib/waves/field/transfer.js';
import { ACCURACY } from '../../src/lib/waves/mesh/accuracy.js';
import { mountMesh } from '../../src/lib/waves/mesh/mount-mesh.js';
import { solveWave, waveProblem } from '../../src/lib/waves/solve/wave-problem.js';
import { USUAL_LOSS } from '../../src/lib/acoustics/mounts/loss.js';

/** At 20 °C, in m/s. */
export const C = 343.2;

/** The largest of these that fits in a shell is taken. */
const FITTING = [SPEAKERS.oval, SPEAKERS['oval-16x35'], SPEAKERS['phone-11x15']];

/** So many frequencies are solved from half of c/(4·(H + W/2)) to twice that; the outputs between are a rational function. */
const SOLVED = 14;
const POINTS = 1200;

/** Inside, in metres. */
export interface ShellSizes {
  length: number;
  width: number;
  height: number;
}

export function shellOf({ length, width, height }: ShellSizes, offset = 0): Installation {
  const speaker = FITTING.find(
    ({ frame }) => outlineWidth(frame) <= width && outlineLength(frame) <= length - 2 * Math.abs(offset)
  )!;
  return {
    speaker,
    mount: { kind: 'shell', length, width, height, ends: 'closed', offset },
    turn: 0
  };
}

/**
 * Where the level straight in front of a closed-ended shell has its tops from half of c/(4·(H + W/2)) to twice that, by the wave
 * solution (mesh of a draft, fine enough for those frequencies), 0 dB the same cone velocity in an endless plate.
 */
export function shellTops(sizes: ShellSizes, offset = 0): { frequency: number; level: number }[] {
  const quarter = C / (4 * (sizes.height + sizes.width / 2));
  const { mesh, pistons } = mountMesh(shellOf(sizes, offset), C, {
    highest: 2 * quarter,
    reach: 2 * quarter,
    perWave: 8,
    cells: { free: 10, folded: 4 },
    budget: 320,
    errorDb: ACCURACY.draft.errorDb
  });
  const problem = waveProblem(mesh, pistons, USUAL_LOSS);
  const frequency = Float64Array.from({ length: SOLVED }, (_, i) => quarter * 0.5 * 4 ** (i / (SOLVED - 1)));
  const heard = complexArray(SOLVED);
  frequency.forEach((f, i) => {
    const state = solveWave(problem, (2 * Math.PI * f) / C);
    const { re, im } = transfer(problem, state, { angleDeg: 0, plane: 'length' });
    [heard.re[i], heard.im[i]] = [re, im];
  });
  const grid = Float64Array.from({ length: POINTS + 1 }, (_, i) => quarter * 0.5 * 4 ** (i / POINTS));
  const level = levelDb(evaluateFit(rationalFit(frequency, [heard], 1e-5), grid)[0]);
  return [...level.keys()]
    .filter((i) => i > 0 && i < POINTS && level[i] >= level[i - 1] && level[i] > level[i + 1])
    .map((i) => ({ frequency: grid[i], level: level[i] }));
}
