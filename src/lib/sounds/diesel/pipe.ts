import type { Hertz, Seconds } from '../../units.js';
import type { Span } from '../blocks/span.js';

/** A round trip through the pipe is forgotten after this many. */
const ROUNDS = 40;

/**
 * A pipe in place: y(t) = x(t) − reflection·(y dulled)(t − delay): its open end sends the wave back reversed and dulled.
 * In a loop it is in its steady state, otherwise it starts from rest.
 *
 * @param delay there and back
 * @param reflection 0 … 0.8
 * @param dull corner frequency of the dulling, a first-order low-pass
 */
export function pipe(
  signal: Float32Array,
  delay: Seconds,
  reflection: number,
  dull: Hertz,
  { sampleRate, cyclic }: Span
): void {
  const length = signal.length;
  const late = delay * sampleRate;
  const whole = Math.floor(late);
  const part = late - whole;
  if (whole < 1) return;
  const keep = Math.exp((-2 * Math.PI * dull) / sampleRate);
  const line = new Float64Array(whole + 1);
  let low = 0;
  let write = 0;
  // A loop is first run unheard from so long before its beginning that the pipe forgets that it was empty.
  for (let n = cyclic ? -ROUNDS * (whole + 1) : 0; n < length; n++) {
    const x = signal[n >= 0 ? n : ((n % length) + length) % length];
    // The line's next place to be written holds what is `whole + 1` old; the one behind it `whole`.
    const older = line[write];
    const newer = line[write === whole ? 0 : write + 1];
    const back = newer + part * (older - newer);
    low = back + keep * (low - back);
    const y = x - reflection * low;
    line[write] = y;
    if (++write > whole) write = 0;
    if (n >= 0) signal[n] = y;
  }
}
