import type { Span } from './span.js';

/**
 * Adds a gamma pulse, (t/τ)²·e^(2−t/τ)/4 with its top of 1 at t = 2τ, to a signal.
 *
 * @param at where it starts, in samples, a real number; in a loop it goes round
 * @param tau in samples
 */
export function addPulse(
  signal: Float32Array,
  { cyclic }: Pick<Span, 'cyclic'>,
  at: number,
  tau: number,
  height: number
): void {
  const length = signal.length;
  const last = Math.min(length, Math.ceil(16 * tau));
  const first = Math.ceil(at);
  const [fall, step] = [Math.exp(-1 / tau), 1 / tau];
  let t = (first - at) / tau;
  let size = (height * Math.exp(2 - t)) / 4;
  let i = cyclic ? ((first % length) + length) % length : first;
  // Nearly every pulse lies in the midst of the signal.
  if (i >= 0 && i + last <= length) return add(signal, i, i + last, t, step, size, fall);
  for (let n = 0; n < last; n++) {
    if (i >= 0) signal[i] += t * t * size;
    t += step;
    size *= fall;
    if (++i >= length) {
      if (!cyclic) return;
      i = 0;
    }
  }
}

function add(
  signal: Float32Array,
  from: number,
  to: number,
  t: number,
  step: number,
  size: number,
  fall: number
): void {
  for (let i = from; i < to; i++) {
    signal[i] += t * t * size;
    t += step;
    size *= fall;
  }
}
