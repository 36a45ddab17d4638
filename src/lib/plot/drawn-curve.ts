import type { EngineCurve } from './engine-curve.js';
import type { Point } from './point.js';

/** A curve together with its visible parts in pixels. */
export interface DrawnCurve {
  curve: EngineCurve;
  runs: Point[][];
}
