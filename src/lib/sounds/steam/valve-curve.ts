import type { Seconds } from '../../units.js';

/** When the cord is pulled and let go. */
export interface Blast {
  from: Seconds;
  to: Seconds;
}

/** Step of the curve. */
export const VALVE_TICK: Seconds = 0.001;
/** The valve opens and closes with these time constants. */
const OPENS: Seconds = 0.028;
const CLOSES: Seconds = 0.06;
/** Below this share nothing flows. */
const SHUT = 1e-4;

/**
 * Pressure under the bells, 0 … 1, at every millisecond: it follows the cord with the time constants of a valve. It
 * begins shut.
 */
export function valveCurve(lasts: Seconds, blasts: readonly Blast[]): Float32Array {
  const count = Math.round(lasts / VALVE_TICK) + 1;
  const curve = new Float32Array(count);
  // Two lags in a row: steam has to get through the valve and fill the bowl, so that it starts gently.
  let bowl = 0;
  let pressure = 0;
  for (let tick = 0; tick < count; tick++) {
    const t = tick * VALVE_TICK;
    const pulled = blasts.some(({ from, to }) => t >= from && t < to) ? 1 : 0;
    const lag = pulled ? OPENS : CLOSES;
    bowl += ((pulled - bowl) * VALVE_TICK) / (lag / 2);
    pressure += ((bowl - pressure) * VALVE_TICK) / lag;
    curve[tick] = !pulled && pressure < SHUT ? 0 : pressure;
  }
  return curve;
}
