import type { CubicMetres, Metres } from '../../units.js';
import { outlineLength, outlineWidth, type Outline } from '../outline.js';
import type { Speaker } from './speaker.js';

/** Depth taken when none is given: 0.4 of the frame's shorter side (common practice for small speakers). */
export function defaultDepth(frame: Outline): Metres {
  return 0.4 * Math.min(outlineLength(frame), outlineWidth(frame));
}

/** Volume of the body taken when none is given: half of the box that just holds frame and depth. */
export function defaultBodyVolume(frame: Outline, depth: Metres): CubicMetres {
  return 0.5 * outlineLength(frame) * outlineWidth(frame) * depth;
}

/** Sizes in mm, moving mass in g, compliance in mm/N, excursion in mm: as such tables are written. */
interface Row {
  frame: [number, number] | [number];
  cone: [number, number] | [number];
  depth: number;
  mms: number;
  cms: number;
  bl: number;
  qms: number;
  xmax: number;
  ratedPower: number;
}

function outline(size: Row['frame'], shape: 'rectangle' | 'ellipse'): Outline {
  if (size.length === 1) return { shape: 'round', diameter: size[0] / 1000 };
  return { shape, length: size[0] / 1000, width: size[1] / 1000 };
}

function speaker(name: string, coneShape: 'rectangle' | 'ellipse', row: Row): Speaker {
  const frame = outline(row.frame, 'rectangle');
  const depth = row.depth / 1000;
  return {
    name,
    frame,
    depth,
    cone: outline(row.cone, coneShape),
    motor: {
      mms: row.mms / 1000,
      cms: row.cms / 1000,
      bl: row.bl,
      re: 7.2,
      qms: row.qms,
      xmax: row.xmax / 1000,
      ratedPower: row.ratedPower
    },
    bodyVolume: defaultBodyVolume(frame, depth)
  };
}

/**
 * Nine reference speakers of the sizes that fit in models: invented, plausible values, made self-consistent (no
 * published source). Real ones differ by 15 to 20 % in resonance. The cones of the phone types are rectangles,
 * as their membranes fill the frame from edge to edge; those of the ovals are ellipses.
 */
export const SPEAKERS: Readonly<Record<string, Speaker>> = {
  oval: speaker('28 × 40 mm', 'ellipse', {
    ...{ frame: [40, 28], cone: [34, 22.5], depth: 12 },
    ...{ mms: 0.55, cms: 0.38, bl: 1.6, qms: 3, xmax: 0.8, ratedPower: 2 }
  }),
  'oval-20x40': speaker('20 × 40 mm', 'ellipse', {
    ...{ frame: [40, 20], cone: [36, 17], depth: 10 },
    ...{ mms: 0.42, cms: 0.34, bl: 1.4, qms: 3, xmax: 0.6, ratedPower: 1.5 }
  }),
  'oval-16x35': speaker('16 × 35 mm', 'ellipse', {
    ...{ frame: [35, 16], cone: [31, 13.55], depth: 10 },
    ...{ mms: 0.25, cms: 0.37, bl: 1.15, qms: 3, xmax: 0.5, ratedPower: 1 }
  }),
  'phone-11x15': speaker('11 × 15 mm', 'rectangle', {
    ...{ frame: [15, 11], cone: [11.4, 7], depth: 3.5 },
    ...{ mms: 0.055, cms: 2.1, bl: 0.85, qms: 2.5, xmax: 0.4, ratedPower: 0.7 }
  }),
  'phone-13x18': speaker('13 × 18 mm', 'rectangle', {
    ...{ frame: [18, 13], cone: [14, 8.6], depth: 4.5 },
    ...{ mms: 0.135, cms: 1.04, bl: 1.1, qms: 2.5, xmax: 0.4, ratedPower: 1 }
  }),
  'round-23': speaker('ø 23 mm', 'ellipse', {
    ...{ frame: [23], cone: [18.9], depth: 10 },
    ...{ mms: 0.13, cms: 0.45, bl: 1, qms: 3, xmax: 0.3, ratedPower: 1 }
  }),
  'round-28': speaker('ø 28 mm', 'ellipse', {
    ...{ frame: [28], cone: [23.9], depth: 10 },
    ...{ mms: 0.26, cms: 0.36, bl: 1.15, qms: 3, xmax: 0.5, ratedPower: 1 }
  }),
  'round-36': speaker('ø 36 mm', 'ellipse', {
    ...{ frame: [36], cone: [30.8], depth: 12 },
    ...{ mms: 0.5, cms: 0.32, bl: 1.4, qms: 3, xmax: 0.7, ratedPower: 1 }
  }),
  'round-50': speaker('ø 50 mm', 'ellipse', {
    ...{ frame: [50], cone: [40.7], depth: 12 },
    ...{ mms: 1.4, cms: 0.37, bl: 2.4, qms: 3, xmax: 1.2, ratedPower: 2 }
  })
};
