import type { Installation } from '../../acoustics/installation.js';
import { turned } from '../../acoustics/outline.js';
import type { Hertz, Metres, MetresPerSecond } from '../../units.js';
import type { Accuracy } from './accuracy.js';
import type { Chamber } from './chamber.js';
import { mountChambers, mountParts, middleOf, SHEETS } from './mount-parts.js';
import { mountPatches } from './mount-openings.js';
import { inMirror, type Patch } from './patch.js';
import { gridsMesh, type Grid } from './parts-mesh.js';
import type { Piston } from './piston.js';
import {
  cutPanels,
  extent,
  freeEnds,
  normalAxis,
  survivingMirrors,
  type SurfacePart
} from './surface-part.js';
import { copies, type Axis, type Mirror, type Vector } from './symmetry.js';
import type { TriangleMesh } from './triangle-mesh.js';

export interface MountMesh {
  mesh: TriangleMesh;
  pistons: Piston[];
  /** What lets air through. */
  patches: Patch[];
  chambers: Chamber[];
  /** Up to where the mesh follows the wavelength. */
  highest: Hertz;
}

/** Largest ratio of the spacings along two sides. */
const STRETCH = 6;
/** A mount that cannot be meshed to this frequency within the budget is refused. */
const LOWEST = 200;
/** By how much a side that ends freely has more lines than an even one. */
const GROWN = 1.28;
/** Share of the cells over a side with two free ends that one with a single free end has: a bit less than half. */
const ONE_END = 0.4;

const AXES: readonly Axis[] = [0, 1, 2];

/**
 * The mesh of a mount and its cone, a quarter where two mirrors survive. The spacing is at most c/(perWave·highest), and a
 * side has at least as many cells as `accuracy` says. A mount too large for the budget is meshed coarser, and `highest` falls
 * in proportion. A board is a wall that reflects it.
 *
 * @param installation one that `checkInstallation` accepts
 * @throws RangeError where even a mesh to 200 Hz would pass the budget
 */
export function mountMesh(installation: Installation, c: MetresPerSecond, accuracy: Accuracy): MountMesh {
  const parts = mountParts(installation);
  const patches = mountPatches(installation, c);
  const mirrors = survivingMirrors(parts).filter((plane) => patches.every((patch) => inMirror(patch, plane)));
  const board = boardUnder(installation, parts);
  for (let highest: Hertz = accuracy.highest; highest >= LOWEST; highest *= 0.9) {
    const grids = gridsOf(parts, c / (accuracy.perWave * highest), accuracy);
    if (estimate(grids, mirrors) > accuracy.budget) continue;
    const mesh = gridsMesh(grids, mirrors);
    const widest = Math.max(...grids.flatMap(({ spacing }) => spacing));
    return {
      mesh: { ...mesh, mirrors: [...mirrors, ...board] },
      patches,
      chambers: mountChambers(installation),
      pistons: pistonsOf(installation),
      highest: Math.max(highest, Math.min(accuracy.reach, c / (accuracy.perWave * widest)))
    };
  }
  throw new RangeError(
    'this mount is too large or too slender for the wave solution: make its longest side shorter or its shortest side longer'
  );
}

/** The board as a wall across z: below the mount, or in front of a cone that looks down. */
function boardUnder({ board }: Installation, parts: readonly SurfacePart[]): Mirror[] {
  if (!board) return [];
  const [lowest, highest] = extent(parts, 2);
  const at = board.facing === 'up' ? lowest - board.above : highest + board.above;
  return [{ axis: 2, at, kind: 'wall' }];
}

/** The cones, all in the plane of plate, roof or front. */
function pistonsOf({ speaker, mount, turn, second }: Installation): Piston[] {
  const outline = turned(speaker.cone, turn);
  const middles = [middleOf(mount), ...(second ? [[...second.at, 0] as const] : [])];
  return middles.map((middle) => ({ outline, middle }));
}

/**
 * One grid for what meets, and one for a body round it: what stands in a body is meshed as finely as by itself, and the body is only where it lies
 * beside that.
 */
function gridsOf(parts: readonly SurfacePart[], wave: Metres, accuracy: Accuracy): Grid[] {
  const isBody = (part: SurfacePart) => part.shape === 'panel' && part.sheet === SHEETS.body;
  const [inner, body] = [parts.filter((part) => !isBody(part)), parts.filter(isBody)];
  const spacing = spacings(inner, wave, accuracy);
  if (body.length === 0) return [{ parts: inner, spacing }];
  const wide = notSlender(
    AXES.map((axis) => {
      const [from, to] = extent(body, axis);
      return Math.min(wave, (to - from) / accuracy.cells.folded);
    })
  );
  const ends = AXES.map((axis) => extent(inner, axis));
  const corner = (end: 0 | 1): Vector => [ends[0][end], ends[1][end], ends[2][end]];
  const beside = AXES.map((axis) => Math.max(spacing[axis], wide[axis] / STRETCH));
  return [
    { parts: inner, spacing },
    {
      parts: body,
      spacing: wide,
      denser: { low: corner(0), high: corner(1), spacing: [beside[0], beside[1], beside[2]] }
    }
  ];
}

/** Spacing along each axis, 0 where there is no extent. */
function spacings(
  parts: readonly SurfacePart[],
  wave: Metres,
  { cells }: Accuracy
): [Metres, Metres, Metres] {
  const across = (some: readonly SurfacePart[], axis: Axis) => {
    const [from, to] = extent(some, axis);
    const free = freeEnds(some, axis).filter((end) => end === from || end === to).length;
    return (to - from) / [cells.folded, ONE_END * cells.free, cells.free][free];
  };
  // what is below a chassis is meshed as what is above it; a lid over the cone is low and takes one cell
  const sheets = (kept: (sheet: number) => boolean) =>
    parts.filter((part) => part.shape === 'ellipse' || kept(part.sheet ?? 0));
  const [first, all] = [
    sheets((sheet) => sheet === SHEETS.mount),
    sheets((sheet) => sheet !== SHEETS.grille)
  ];
  const flat = parts.length > all.length ? wave : 0;
  const own = AXES.map((axis) => Math.min(wave, across(first, axis) || flat, across(all, axis) || flat));
  return notSlender(own);
}

/** No spacing much larger than the least of them. */
function notSlender(own: readonly Metres[]): [Metres, Metres, Metres] {
  const finest = Math.min(...own.filter((h) => h > 0));
  const [x, y, z] = own.map((h) => Math.min(h, STRETCH * finest));
  return [x, y, z];
}

/** About the number of nodes that a quarter has, or one would have that takes as long: without a mirror unknowns are twice as many in one system. */
function estimate(grids: readonly Grid[], mirrors: readonly Mirror[]): number {
  const nodes = grids.reduce((sum, grid) => sum + nodesOf(grid, mirrors), 0);
  const quarters = 4 / copies(mirrors);
  return (nodes / quarters) * quarters ** (2 / 3);
}

function nodesOf({ parts, spacing, denser }: Grid, mirrors: readonly Mirror[]): number {
  const free = AXES.map((axis) => freeEnds(parts, axis));
  let nodes = 0;
  for (const panel of cutPanels(parts, mirrors)) {
    const [u, v] = AXES.filter((axis) => axis !== normalAxis(panel)).map((axis) => {
      const [from, to] = [panel.low[axis], panel.high[axis]];
      const grown = free[axis].some((end) => end === from || end === to) ? GROWN : 1;
      const dense = denser
        ? Math.max(0, Math.min(to, denser.high[axis]) - Math.max(from, denser.low[axis]))
        : 0;
      const cells = ((to - from - dense) * grown) / spacing[axis] + dense / (denser?.spacing[axis] ?? 1);
      return cells + 1;
    });
    nodes += u * v;
  }
  for (const part of parts)
    if (part.shape === 'ellipse') {
      const quarter =
        ((Math.PI / 4) * Math.max(...part.semiAxes) ** 2 * GROWN) / Math.min(spacing[0], spacing[1]) ** 2;
      nodes += (quarter * 4) / copies(mirrors);
    }
  return nodes;
}
