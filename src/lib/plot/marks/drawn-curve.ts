import type { EngineCurve } from './response-curve.js';
import type { Point } from '../scales/point.js';

/** A curve together with its visible parts in pixels. */
export interface DrawnCurve {
  curve: EngineCurve;
  runs: Point[][];
}
