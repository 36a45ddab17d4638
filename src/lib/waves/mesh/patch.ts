import type { Complex } from '../../numeric/complex.js';
import type { Mirror } from './symmetry.js';
import type { Metres, SquareMetres } from '../../units.js';

/** A flat rectangle of a surface, parallel to two axes: least and greatest coordinates, the same on the axis of its normal. */
export interface PatchArea {
  low: readonly [Metres, Metres, Metres];
  high: readonly [Metres, Metres, Metres];
}

/** Whether a patch is symmetric in a plane through the origin. */
export function inMirror({ areas }: Patch, { axis }: Mirror): boolean {
  const near = (a: Metres, b: Metres) => Math.abs(a - b) <= 1e-9;
  return areas.every((one) =>
    areas.some((other) =>
      ([0, 1, 2] as const).every((d) =>
        d === axis
          ? near(other.low[d], -one.high[d]) && near(other.high[d], -one.low[d])
          : near(other.low[d], one.low[d]) && near(other.high[d], one.high[d])
      )
    )
  );
}

/** A part of the surface through which air passes. */
export interface Patch {
  areas: readonly PatchArea[];
  /** The sheet of the mesh in which they are, where two lie one upon the other; any unless told. */
  sheet?: number;
  /**
   * jωρ/Z at a wave number, in 1/m; Z is the pressure jump over the normal velocity, Pa·s/m. 0 is the rigid wall. `damping` is the δ
   * of a wave that dies away by e^{−δωt}, `area` that of the whole patch.
   */
  admittance: (k: number, damping: number, area: SquareMetres) => Complex;
}
