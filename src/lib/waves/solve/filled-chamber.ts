import type { ComplexArray } from '../../numeric/complex-array.js';
import type { Complex } from '../../numeric/complex.js';
import type { StaticMatrices } from '../assembly/static-matrices.js';
import type { Chamber } from '../mesh/chamber.js';
import type { Surface } from '../mesh/surface.js';

/** A chamber as the equations see it. */
export interface FilledChamber extends Chamber {
  /** The symmetry class that is even everywhere, and its unknowns on the chamber's wall. */
  class: number;
  wall: Int32Array;
  /** 1ᵀ·A1·1 over the wall: k² times it is the spring of the empty chamber. */
  spring: number;
}

/** What a chamber did to the equations at one frequency, and has to do to their solution. */
export interface Filling {
  /** Takes the raised part off a solution, in place, and returns it. */
  settle: (jumps: (ComplexArray | null)[]) => Complex;
}

/** The unknowns of a chamber's wall and the spring of its air. */
export function chamberOf(
  surface: Surface,
  statics: readonly (StaticMatrices | null)[],
  chamber: Chamber
): FilledChamber {
  const even = surface.classes.findIndex(({ odd }) => odd.length === 0);
  const { nodes } = surface.classes[even];
  const { sheets } = surface.mesh;
  const wall = Int32Array.from([...nodes.keys()].filter((i) => (sheets?.[nodes[i]] ?? 0) === chamber.sheet));
  const a1 = statics[even]?.a1;
  let spring = 0;
  if (a1) for (const i of wall) for (const j of wall) spring += a1[i * nodes.length + j];
  return { ...chamber, class: even, wall, spring };
}

/**
 * Makes the air of a chamber as stiff as that of its share of the volume. A raised pressure that is the same all over the chamber
 * drives what passes its openings and presses on the cone, but radiates nothing by itself: with the jump m = m0 + a·1, 1 on the wall,
 * and a = β·1ᵀA·m0 the equations A·m0 − Y·m = −q become A′·m − Y·m = −q, A′ = A − β·A1·(A1)ᵀ/(1 + β·1ᵀA1). They stay symmetric and keep the
 * power. With β = (1/s′ − 1/s)/k², s = 1ᵀ·A1·1, the spring is exactly that of the air that is left. Where a chamber is no longer small
 * against the wavelength β fades away: standing waves are left as they are.
 */
export function fillChamber(
  { class: even, wall, spring, share, low, high }: FilledChamber,
  k: number,
  loss: number,
  matrices: readonly (ComplexArray | null)[]
): Filling {
  const matrix = matrices[even];
  if (!matrix || share === 1 || wall.length === 0) return { settle: () => ({ re: 0, im: 0 }) };
  const n = Math.sqrt(matrix.re.length);
  const row = { re: new Float64Array(n), im: new Float64Array(n) };
  for (const i of wall)
    for (let j = 0; j < n; j++) {
      const at = i <= j ? i * n + j : j * n + i;
      row.re[j] += matrix.re[at];
      row.im[j] += matrix.im[at];
    }
  let [sumRe, sumIm] = [0, 0];
  for (const i of wall) {
    sumRe += row.re[i];
    sumIm += row.im[i];
  }
  const length = Math.max(...high.map((end, d) => end - low[d]));
  const fade = 1 / (1 + ((k * length) / (2 * Math.PI)) ** 4);
  const size = (fade * (1 / share - 1)) / spring;
  // over k²·(1 − jη)², with which the spring goes
  const beta = over({ re: size, im: 0 }, { re: k * k * (1 - loss * loss), im: -2 * k * k * loss });
  const gamma = over(beta, {
    re: 1 + beta.re * sumRe - beta.im * sumIm,
    im: beta.re * sumIm + beta.im * sumRe
  });
  for (let i = 0; i < n; i++) {
    const gr = gamma.re * row.re[i] - gamma.im * row.im[i];
    const gi = gamma.re * row.im[i] + gamma.im * row.re[i];
    for (let j = i; j < n; j++) {
      matrix.re[i * n + j] -= gr * row.re[j] - gi * row.im[j];
      matrix.im[i * n + j] -= gr * row.im[j] + gi * row.re[j];
    }
  }
  return { settle: (jumps) => settle(jumps[even], row, gamma, wall) };
}

function settle(m: ComplexArray | null, row: ComplexArray, gamma: Complex, wall: Int32Array): Complex {
  if (!m) return { re: 0, im: 0 };
  let [re, im] = [0, 0];
  for (let i = 0; i < row.re.length; i++) {
    re += row.re[i] * m.re[i] - row.im[i] * m.im[i];
    im += row.re[i] * m.im[i] + row.im[i] * m.re[i];
  }
  const raised = { re: gamma.re * re - gamma.im * im, im: gamma.re * im + gamma.im * re };
  for (const i of wall) {
    m.re[i] -= raised.re;
    m.im[i] -= raised.im;
  }
  return raised;
}

function over(a: Complex, b: Complex): Complex {
  const square = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / square, im: (a.im * b.re - a.re * b.im) / square };
}
