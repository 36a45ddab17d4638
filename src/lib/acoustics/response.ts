import type { ComplexArray } from '../numeric/complex-array.js';

/** A complex response, time factor e^{+jωt}, with the grid (Hz, ascending) it was computed on. */
export interface Response extends ComplexArray {
  frequency: Float64Array;
}
