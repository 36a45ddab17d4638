import type { ResponseCurve } from '../response-curve.js';
import type { Point } from './point.js';

/** A curve together with its visible parts in pixels. */
export interface DrawnCurve {
  curve: ResponseCurve;
  runs: Point[][];
}
