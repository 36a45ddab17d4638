import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Board } from '../../src/lib/acoustics/mounts/board.js';
import type { Chassis } from '../../src/lib/acoustics/mounts/mount.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { transfer } from '../../src/lib/waves/field/transfer.js';
import { mountProblem } from '../../src/lib/waves/solve/mount-problem.js';
import { solveWave } from '../../src/lib/waves/solve/wave-problem.js';
import { close } from '../helpers/close.js';

/** Real and imaginary part. */
type Pair = [number, number];

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
    chassis?: { height: number; gap: number };
    coarse: Pair[][];
    fine: Pair[][];
  }[];
}

const reference = JSON.parse(
  readFileSync(new URL('../reference/shells-in-time.json', import.meta.url), 'utf8')
) as InTime;

/**
 * Where the levels of the two grids differ by more than this, in dB, at any place, a resonance has moved with the grid, or a dip: 1 dB is asked for
 * there, 0.3 dB elsewhere.
 */
const MOVED = 0.5;
/** A dip so far below the loudest place, where one has moved, is compared as a share of that, phase and all. */
const DIP = 15;
/** Where they differ by more than this the grids do not resolve a resonance: at the ring over a chassis, whose gaps are one and two cells. */
const LOST = 1.5;

describe('shells agree with finite differences in time', () => {
  for (const { name, shell, cone, above, facing, chassis, coarse, fine } of reference.cases)
    it(name, () => {
      const [length, width, height] = shell;
      const outline = { shape: 'rectangle' as const, length: cone[0], width: cone[1] };
      const { problem, c } = mountProblem(
        {
          speaker: { ...SPEAKERS.oval, bodyVolume: 0, frame: outline, cone: outline },
          mount: {
            kind: 'shell',
            length,
            width,
            height,
            ends: 'closed',
            offset: 0,
            ...(chassis && { chassis: asThin(chassis) })
          },
          turn: 0,
          ...(above && facing ? { board: { above, facing } } : {})
        },
        reference,
        { loss: 0 }
      );
      const because = 'another method on grids of 4 and 2 mm, extrapolated';
      const lost = new Set<number>();
      reference.frequency.forEach((f, i) => {
        const state = solveWave(problem, (2 * Math.PI * f) / c);
        const at = reference.listeners.map((_, l) => [coarse[l][i], fine[l][i]] as const);
        const between = Math.max(...at.map(([a, b]) => Math.abs(level(b) - level(a))));
        if (between > LOST && chassis) {
          lost.add(f);
          return;
        }
        const foretold = at.map(([a, b]): Pair => [2 * b[0] - a[0], 2 * b[1] - a[1]]);
        const loudest = Math.max(...foretold.map(([re, im]) => Math.hypot(re, im)));
        reference.listeners.forEach(([angleDeg, plane], l) => {
          const { re, im } = transfer(problem, state, { angleDeg, plane, distance: reference.distance });
          const why = `${because}; at ${f} Hz they differ by up to ${between.toFixed(2)} dB`;
          if (between > MOVED && level(foretold[l]) < 20 * Math.log10(loudest) - DIP)
            close(Math.hypot(re - foretold[l][0], im - foretold[l][1]), 0, {
              abs: 0.02 * loudest,
              because: why
            });
          else close(level([re, im]), level(foretold[l]), { abs: between > MOVED ? 1 : 0.3, because: why });
        });
      });
      expect(lost.size).toBeLessThanOrEqual(3);
    });
});

/** A chassis as thin as those of the grids. */
function asThin({ height, gap }: { height: number; gap: number }): Chassis {
  return { height, slit: gap, ends: gap, depth: 1e-4, fill: 0 };
}

function level([re, im]: Pair): number {
  return 20 * Math.log10(Math.hypot(re, im));
}
