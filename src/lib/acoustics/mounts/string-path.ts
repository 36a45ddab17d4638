import type { Metres } from '../../units.js';
import type { Installation } from '../installation.js';
import type { ShellMount } from './mount.js';
import { outlineLength, outlineWidth, turned, type Outline } from '../outline.js';

/** A point of the surface: x along the mount's length, y across it, z up; the plate or the roof is z = 0. */
export type SurfacePoint = readonly [Metres, Metres, Metres];

export interface StringPath {
  /** D: from the middle of the cone round the edge to its middle on the other side. */
  length: Metres;
  /** The free edge it goes round: a long side, an end across the length, or a curved rim. */
  edge: 'side' | 'end' | 'rim';
  /** Unit vector [x, y] in which the string leaves the cone, seen from above. */
  direction: readonly [number, number];
  /** From the middle of the cone over the surface to the free edge; the way back is the same on the other side. */
  route: readonly SurfacePoint[];
}

/**
 * The shortest string from the middle of the cone, over the surface, round the nearest free edge, to the middle of
 * the cone on the other side: twice the least geodesic to a free edge. On a flat plate that is the nearest edge; on
 * a shell, unfolded, the least of roof → side wall → bottom edge, roof → closed end → bottom edge, and roof → open
 * end. Free air is a plate of the outline of the frame. Where two ways are equally long, the one across the
 * width, towards +y, then towards +x, is given. A box has no way round: null.
 *
 * @param installation one that `checkInstallation` accepts
 */
export function stringPath({ speaker, mount, turn }: Installation): StringPath | null {
  switch (mount.kind) {
    case 'box':
      return null;
    case 'free':
      return overFlat(turned(speaker.frame, turn), [0, 0]);
    case 'plate':
      return overFlat(mount, mount.offset);
    case 'shell':
      return overShell(mount);
  }
}

type Flat = Outline | { shape: 'rectangle'; length: Metres; width: Metres };

function overFlat(plate: Flat, [x, y]: readonly [Metres, Metres]): StringPath {
  if (plate.shape === 'rectangle') {
    const toSide = plate.width / 2 - Math.abs(y);
    const toEnd = plate.length / 2 - Math.abs(x);
    return toSide <= toEnd
      ? {
          length: 2 * toSide,
          edge: 'side',
          direction: [0, sign(y)],
          route: straight(x, y, x, (sign(y) * plate.width) / 2)
        }
      : {
          length: 2 * toEnd,
          edge: 'end',
          direction: [sign(x), 0],
          route: straight(x, y, (sign(x) * plate.length) / 2, y)
        };
  }
  if (plate.shape === 'round') {
    const r = Math.hypot(x, y);
    const direction = r > 0 ? ([x / r, y / r] as const) : ([0, 1] as const);
    const a = plate.diameter / 2;
    return {
      length: 2 * (a - r),
      edge: 'rim',
      direction,
      route: straight(x, y, a * direction[0], a * direction[1])
    };
  }
  // an elliptic frame, always with the cone in its middle: the end of the short axis is nearest
  const a = outlineLength(plate) / 2;
  const b = outlineWidth(plate) / 2;
  return b <= a
    ? { length: 2 * b, edge: 'rim', direction: [0, 1], route: straight(0, 0, 0, b) }
    : { length: 2 * a, edge: 'rim', direction: [1, 0], route: straight(0, 0, a, 0) };
}

function overShell({ length, width, height, ends, offset: x }: ShellMount): StringPath {
  const overSide = width / 2 + height;
  const toEnd = length / 2 - Math.abs(x);
  const overEnd = ends === 'open' ? toEnd : toEnd + height;
  if (overSide <= overEnd) {
    const y = width / 2;
    return {
      length: 2 * overSide,
      edge: 'side',
      direction: [0, 1],
      route: [
        [x, 0, 0],
        [x, y, 0],
        [x, y, -height]
      ]
    };
  }
  const end = (sign(x) * length) / 2;
  const route: SurfacePoint[] = [
    [x, 0, 0],
    [end, 0, 0]
  ];
  if (ends === 'closed') route.push([end, 0, -height]);
  return { length: 2 * overEnd, edge: 'end', direction: [sign(x), 0], route };
}

function straight(x0: Metres, y0: Metres, x1: Metres, y1: Metres): SurfacePoint[] {
  return [
    [x0, y0, 0],
    [x1, y1, 0]
  ];
}

function sign(x: number): 1 | -1 {
  return x < 0 ? -1 : 1;
}
