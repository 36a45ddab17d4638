import { describe, expect, it } from 'vitest';
import { lossOf, USUAL_LOSS } from '../../src/lib/acoustics/mounts/loss.js';
import type { ShellMount } from '../../src/lib/acoustics/mounts/mount.js';
import { ringFrequency } from '../../src/lib/acoustics/rule/ring-frequency.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { DEMO_MOUNTS } from '../../src/lib/file/demo-bench.js';
import { LEAVES_OUT } from '../../src/lib/screens/help/leaves-out.js';
import { EXPLANATIONS } from '../../src/lib/screens/parts/explanations.js';
import { solutionKey, solveMount, waveResponse } from '../../src/lib/waves/wave-solution.js';
import { close } from '../helpers/close.js';
import { AIR, IN_FRONT } from '../helpers/demo-installations.js';

const C = 343.2;
/** Of air at 20 °C: kinematic viscosity in m²/s, Prandtl number, ratio of specific heats (acoustics handbooks, from memory). */
const [NU, PRANDTL, GAMMA] = [1.81e-5 / 1.204, 0.71, 1.4];

/**
 * Loss factor of the air in a wide duct: a boundary layer at its walls takes α = (P/(2S·c))·√(νω/2)·(1 + (γ − 1)/√Pr) of the wave a metre
 * (G. Kirchhoff, Ann. Phys. 134 (1868) 177), and η = α·c/ω. P/S is perimeter over area.
 */
function boundaryLayerLoss(perimeterOverArea: number, frequency: number): number {
  const w = 2 * Math.PI * frequency;
  return (perimeterOverArea / 2) * Math.sqrt(NU / (2 * w)) * (1 + (GAMMA - 1) / Math.sqrt(PRANDTL));
}

/** tanh(x)/x of x = (1 + j)·a, for a so large that tanh is 1: (1 − j)/(2a). */
function layer(gap: number, diffusivity: number, frequency: number): [number, number] {
  const a = (gap / 2) * Math.sqrt((Math.PI * frequency) / diffusivity);
  return [1 / (2 * a), -1 / (2 * a)];
}

/** The same between two walls, exactly: k² = (ω/c)²·(1 + (γ − 1)·tanh(y)/y)/(1 − tanh(x)/x). */
function slitLoss(gap: number, frequency: number): number {
  const [xr, xi] = layer(gap, NU, frequency);
  const [yr, yi] = layer(gap, NU / PRANDTL, frequency);
  const [nr, ni] = [1 + (GAMMA - 1) * yr, (GAMMA - 1) * yi];
  const [dr, di] = [1 - xr, -xi];
  const square = dr * dr + di * di;
  const [kr, ki] = [(nr * dr + ni * di) / square, (ni * dr - nr * di) / square];
  // k = (1 − jη)·√|k²|: half the angle of k².
  return -Math.tan(Math.atan2(ki, kr) / 2);
}

/** Of a shell's trough, whose walls all stand along the wave. */
function friction({ length, width, height }: ShellMount): number {
  const f = ringFrequency({ length, width, height }, C);
  return boundaryLayerLoss((2 * (length + width)) / (length * width), f);
}

const CAB = DEMO_MOUNTS.shell as ShellMount;
const half = { ...CAB, length: CAB.length / 2, width: CAB.width / 2, height: CAB.height / 2 };

describe('the loss inside a shell', () => {
  it('of a wide duct is that between two walls, exactly, where their layers are thin', () => {
    for (const [gap, f] of [
      [0.033, 1500],
      [0.016, 3000]
    ])
      close(boundaryLayerLoss(2 / gap, f) / slitLoss(gap, f), 1, {
        abs: 0.01,
        because: 'the layer of 0.06 mm is thin; second order'
      });
  });

  it('by friction alone: 0.15 % in the demo’s cab body, 0.26 % in one half as wide', () => {
    expect(EXPLANATIONS.loss.text).toContain(
      'about 0.15 % in the shell of a full-width diesel and 0.26 % in one half as wide'
    );
    const said = LEAVES_OUT.flatMap(({ gaps }) => gaps.map(({ text }) => text)).join();
    expect(said).toContain(
      `${100 * USUAL_LOSS} % unless told. Friction at smooth walls alone takes about half of that in the shell of a full-width diesel, most of it in one half as wide`
    );
    expect(friction({ ...CAB, width: 0.0165 }) / USUAL_LOSS).toBeGreaterThan(0.75);
    close(friction(CAB), 0.0015, { abs: 0.0001, because: 'two figures are said' });
    close(friction({ ...CAB, width: 0.0165 }), 0.0026, { abs: 0.00005, because: 'two figures are said' });
    expect(friction(half)).toBeLessThan(USUAL_LOSS);
  });

  it('lowers the ring: 10.7 dB with 0.3 %, 9.2 dB with 3 %', () => {
    expect(EXPLANATIONS.loss.text).toContain('rings by 10.7 dB with 0.3 %, by 9.2 dB with 3 %');
    const grid = Float64Array.from({ length: 200 }, (_, i) => 1300 + 2 * i);
    const peak = (mount: ShellMount) => {
      const solved = solveMount({ speaker: SPEAKERS.oval, mount, turn: 0 }, AIR, { accuracy: 'draft' });
      const { re, im } = waveResponse(solved, IN_FRONT, grid, 'ideal');
      return Math.max(...grid.map((_, i) => 20 * Math.log10(Math.hypot(re[i], im[i]))));
    };
    close(peak(CAB), 10.7, { abs: 0.05, because: 'one decimal is said' });
    close(peak({ ...CAB, loss: 0.003 }), peak(CAB), { abs: 1e-12, because: 'the usual one' });
    close(peak({ ...CAB, loss: 0.03 }), 9.2, { abs: 0.05, because: 'one decimal is said' });
  });

  it('is the shell’s own, and a solution with another one is another', () => {
    expect([lossOf(CAB), lossOf({ ...CAB, loss: 0 }), lossOf({ kind: 'free' })]).toEqual([0.003, 0, 0.003]);
    const key = (mount: ShellMount) => solutionKey({ speaker: SPEAKERS.oval, mount, turn: 0 }, AIR);
    expect(key({ ...CAB, loss: 0.01 })).not.toBe(key(CAB));
  });
});
