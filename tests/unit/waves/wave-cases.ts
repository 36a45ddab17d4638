import type { Outline } from '../../../src/lib/acoustics/outline.js';
import { acousticLoad } from '../../../src/lib/waves/field/acoustic-load.js';
import { farField } from '../../../src/lib/waves/field/far-field.js';
import { boxParts, type Walls } from '../../../src/lib/waves/mesh/mount-parts.js';
import { partsMesh } from '../../../src/lib/waves/mesh/parts-mesh.js';
import type { Vector } from '../../../src/lib/waves/mesh/symmetry.js';
import type { TriangleMesh } from '../../../src/lib/waves/mesh/triangle-mesh.js';
import type { WaveProblem, WaveState } from '../../../src/lib/waves/solve/wave-problem.js';
import { gaussLegendre } from '../../../src/lib/numeric/gauss-legendre.js';

/** Sound speed of the tests, m/s. */
export const C = 343.2;

export const OVAL: Outline = { shape: 'ellipse', length: 0.036, width: 0.022 };

export function boxMesh(sides: Vector, walls: Walls, spacing: Vector): TriangleMesh {
  return partsMesh(boxParts(sides, walls), spacing);
}

export function ellipseMesh(a: number, b: number, spacing: number): TriangleMesh {
  return partsMesh([{ shape: 'ellipse', semiAxes: [a, b] }], [spacing, spacing, 0]);
}

/** Coarse meshes of the forms there are; the spacing in metres. */
export function coarse(form: 'plate' | 'round' | 'shell' | 'open shell' | 'box', h = 0.012): TriangleMesh {
  const walls = {
    sides: form !== 'plate',
    ends: form !== 'plate' && form !== 'open shell',
    floor: form === 'box'
  };
  switch (form) {
    case 'plate':
      return boxMesh([0.15, 0.1, 0], walls, [h, h, h]);
    case 'round':
      return ellipseMesh(0.05, 0.05, h);
    case 'shell':
    case 'open shell':
      return boxMesh([0.152, 0.03, 0.045], walls, [h, h, h]);
    case 'box':
      return boxMesh([0.042, 0.029, 0.017], walls, [h, h, h]);
  }
}

export function waveNumber(f: number): number {
  return (2 * Math.PI * f) / C;
}

export function db({ re, im }: { re: number; im: number }): number {
  return 20 * Math.log10(Math.hypot(re, im));
}

/** Unit vector at an angle from the axis, in degrees, and round it. */
export function toward(angleDeg: number, roundDeg = 0): [number, number, number] {
  const [a, b] = [(angleDeg * Math.PI) / 180, (roundDeg * Math.PI) / 180];
  return [Math.sin(a) * Math.cos(b), Math.sin(a) * Math.sin(b), Math.cos(a)];
}

/**
 * Power through a sphere far away over the power at the cone. With p = jωρU·H/(2πr) the first is
 * (ωρ|U|)²/(2ρc·4π²)·∮|H|² dΩ, the second ½·Re(Za)·|U|² = −½ωρ·Im(z)·|U|².
 */
export function powerRatio(problem: WaveProblem, state: WaveState): number {
  const { nodes, weights } = gaussLegendre(24);
  const round = 48;
  let sphere = 0;
  nodes.forEach((height, i) => {
    const angle = (Math.acos(height) * 180) / Math.PI;
    for (let j = 0; j < round; j++) {
      const { re, im } = farField(problem, state, toward(angle, (360 * j) / round));
      sphere += ((re * re + im * im) * weights[i] * 2 * Math.PI) / round;
    }
  });
  return (state.k * sphere) / (4 * Math.PI ** 2) / -acousticLoad(problem, state).im;
}

/**
 * What is lost in patches, ½∫ Re(1/Z)·|μ|² dS, over the power at the cone: with m the jump over jωρv, Im(jωρ/Z)·∫|m|² over −Im ∫ m. The jump
 * across a patch is all of it, also what is raised in a chamber.
 */
export function lostShare(problem: WaveProblem, state: WaveState): number {
  const { surface, patches, pistons, chambers } = problem;
  let lost = 0;
  for (const { mass, admittance } of patches) {
    const { im } = admittance(state.k, 0, mass.area);
    state.jumps[0].forEach((own, c) => {
      if (!own) return;
      const m = { re: own.re.slice(), im: own.im.slice() };
      chambers.forEach((chamber, i) => {
        if (chamber.class !== c) return;
        chamber.wall.forEach((one, node) => {
          m.re[node] += one * state.raised[0][i].re;
          m.im[node] += one * state.raised[0][i].im;
        });
      });
      const entries = mass.entries[c];
      for (let e = 0; e < entries.length; e += 3) {
        const [i, j, value] = entries.subarray(e, e + 3);
        lost += (i === j ? 1 : 2) * im * value * (m.re[i] * m.re[j] + m.im[i] * m.im[j]) * surface.copies;
      }
    });
  }
  return lost / pistons[0].area ** 2 / -acousticLoad(problem, state).im;
}
