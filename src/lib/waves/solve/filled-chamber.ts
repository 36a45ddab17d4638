import type { ComplexArray } from '../../numeric/complex-array.js';
import type { Complex } from '../../numeric/complex.js';
import type { StaticMatrices } from '../assembly/static-matrices.js';
import type { Chamber } from '../mesh/chamber.js';
import type { PatchArea } from '../mesh/patch.js';
import type { Surface } from '../mesh/surface.js';

/** A chamber as the equations see it. */
export interface FilledChamber extends Chamber {
  /** The symmetry class that is even everywhere. */
  class: number;
  /** What a raised jump of 1 is for each of its unknowns: 1 or −1 on the chamber's wall, as its front looks out or in, 0 elsewhere. */
  wall: Float64Array;
  /** 1ᵀ·A1·1, 1 the raised jump: k² times it is the spring of the empty chamber. */
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
  const { sheets, points } = surface.mesh;
  const wall = Float64Array.from(nodes, (node) => {
    if ((sheets?.[node] ?? 0) === chamber.sheet) return 1;
    const at = points.subarray(3 * node, 3 * node + 3);
    return chamber.shared && isWithin(chamber.shared, at) ? -1 : 0;
  });
  const a1 = statics[even]?.a1;
  let spring = 0;
  if (a1)
    wall.forEach((own, i) => wall.forEach((other, j) => (spring += own * other * a1[i * wall.length + j])));
  return { ...chamber, class: even, wall, spring };
}

/** Whether a point lies in a rectangle, off its edges. */
function isWithin({ low, high }: PatchArea, point: Float64Array): boolean {
  const grain = 1e-9;
  return point.every((x, d) =>
    low[d] === high[d] ? Math.abs(x - low[d]) < grain : x > low[d] + grain && x < high[d] - grain
  );
}

/**
 * Makes the air of a chamber as stiff as that of its share of the volume. A raised pressure that is the same all over the chamber
 * drives what passes its openings and presses on the cone, but radiates nothing by itself: with the jump m = m0 + a·1, 1 on the wall,
 * and a = β·1ᵀA·m0 the equations A·m0 − Y·m = −q become A′·m − Y·m = −q, A′ = A − β·A1·(A1)ᵀ/(1 + β·1ᵀA1). They stay symmetric and keep the
 * power. With β = (1/s′ − 1/s)/k², s = 1ᵀ·A1·1, the spring is exactly that of the air that is left. Where a chamber is no longer small
 * against the wavelength β fades away: standing waves are left as they are.
 */
export function fillChamber(
  { class: even, wall, spring, share, longest }: FilledChamber,
  k: number,
  loss: number,
  matrices: readonly (ComplexArray | null)[]
): Filling {
  const matrix = matrices[even];
  if (!matrix || share === 1 || spring === 0) return { settle: () => ({ re: 0, im: 0 }) };
  const row = timesWall(matrix, wall);
  const [sumRe, sumIm] = [dot(wall, row.re), dot(wall, row.im)];
  const fade = longest ? 1 / (1 + ((k * longest) / (2 * Math.PI)) ** 4) : 1;
  const size = (fade * (1 / share - 1)) / spring;
  // over k²·(1 − jη)², with which the spring goes
  const beta = over({ re: size, im: 0 }, { re: k * k * (1 - loss * loss), im: -2 * k * k * loss });
  const gamma = over(beta, {
    re: 1 + beta.re * sumRe - beta.im * sumIm,
    im: beta.re * sumIm + beta.im * sumRe
  });
  const n = wall.length;
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

/** A·1 of a symmetric matrix of which the upper triangle is there. */
function timesWall({ re, im }: ComplexArray, wall: Float64Array): ComplexArray {
  const n = wall.length;
  const row = { re: new Float64Array(n), im: new Float64Array(n) };
  for (let i = 0; i < n; i++) {
    if (wall[i] === 0) continue;
    for (let j = 0; j < n; j++) {
      const at = i <= j ? i * n + j : j * n + i;
      row.re[j] += wall[i] * re[at];
      row.im[j] += wall[i] * im[at];
    }
  }
  return row;
}

function settle(m: ComplexArray | null, row: ComplexArray, gamma: Complex, wall: Float64Array): Complex {
  if (!m) return { re: 0, im: 0 };
  const re = dot(row.re, m.re) - dot(row.im, m.im);
  const im = dot(row.re, m.im) + dot(row.im, m.re);
  const raised = { re: gamma.re * re - gamma.im * im, im: gamma.re * im + gamma.im * re };
  for (let i = 0; i < wall.length; i++) {
    m.re[i] -= wall[i] * raised.re;
    m.im[i] -= wall[i] * raised.im;
  }
  return raised;
}

function dot(a: Float64Array, b: Float64Array): number {
  return a.reduce((sum, x, i) => sum + x * b[i], 0);
}

function over(a: Complex, b: Complex): Complex {
  const square = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / square, im: (a.im * b.re - a.re * b.im) / square };
}
