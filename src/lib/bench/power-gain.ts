import type { Air } from '../acoustics/air.js';
import type { Installation } from '../acoustics/installation.js';
import type { Listener } from '../acoustics/listener.js';
import { ruleOfThumb } from '../acoustics/rule-of-thumb.js';

/** |H|² on evenly spaced bins from 0. */
export function powerGain(
  installation: Installation,
  air: Air,
  listener: Listener,
  bins: number,
  binWidth: number
): Float64Array {
  const frequency = Float64Array.from({ length: bins }, (_, k) => k * binWidth);
  const { re, im } = ruleOfThumb(installation, air, listener, frequency, 'full');
  return re.map((real, k) => real * real + im[k] * im[k]);
}
