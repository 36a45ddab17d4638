import { readFileSync } from 'node:fs';
import { describe, it } from 'vitest';
import type { Board } from '../../src/lib/acoustics/mounts/board.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { transfer } from '../../src/lib/waves/field/transfer.js';
import { mountProblem } from '../../src/lib/waves/solve/mount-problem.js';
import { solveWave } from '../../src/lib/waves/solve/wave-problem.js';
import { close } from '../helpers/close.js';

/** Made by tests/reference/shells-in-time.py, which shares nothing with the boundary elements. */
interface InTime {
  temperatureC: number;
  distance: number;
  frequency: number[];
  listeners: [number, 'length' | 'width'][];
  cases: {
    name: string;
    shell: [number, number, number];
    cone: [number, number];
    above?: number;
    facing?: Board['facing'];
    coarseDb: number[][];
    fineDb: number[][];
  }[];
}

const reference = JSON.parse(
  readFileSync(new URL('../reference/shells-in-time.json', import.meta.url), 'utf8')
) as InTime;

/** Where the two grids differ by more than this, in dB, a resonance or a dip has moved with the grid: 1 dB is asked for there, 0.3 dB elsewhere. */
const MOVED = 0.5;
/** Such a dip, so far below the loudest place at its frequency, is compared as a share of that. */
const DIP = 15;

describe('shells agree with finite differences in time', () => {
  for (const { name, shell, cone, above, facing, coarseDb, fineDb } of reference.cases)
    it(name, () => {
      const [length, width, height] = shell;
      const { problem, c } = mountProblem(
        {
          speaker: {
            ...SPEAKERS.oval,
            frame: { shape: 'rectangle', length: cone[0], width: cone[1] },
            cone: { shape: 'rectangle', length: cone[0], width: cone[1] }
          },
          mount: { kind: 'shell', length, width, height, ends: 'closed', offset: 0 },
          turn: 0,
          ...(above && facing ? { board: { above, facing } } : {})
        },
        reference,
        { loss: 0 }
      );
      const because = 'another method on grids of 4 and 2 mm, extrapolated';
      reference.frequency.forEach((f, i) => {
        const state = solveWave(problem, (2 * Math.PI * f) / c);
        const loudest = Math.max(...fineDb.map((levels) => levels[i]));
        reference.listeners.forEach(([angleDeg, plane], l) => {
          const { re, im } = transfer(problem, state, { angleDeg, plane, distance: reference.distance });
          const heard = Math.hypot(re, im);
          const [coarse, fine] = [coarseDb[l][i], fineDb[l][i]];
          const expected = 2 * fine - coarse;
          const moved = Math.abs(fine - coarse) > MOVED;
          if (moved && fine < loudest - DIP)
            close(heard, amplitude(expected), { abs: 0.06 * amplitude(loudest), because });
          else close(20 * Math.log10(heard), expected, { abs: moved ? 1 : 0.3, because });
        });
      });
    });
});

function amplitude(levelDb: number): number {
  return 10 ** (levelDb / 20);
}
