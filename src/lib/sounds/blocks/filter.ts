import type { Hertz } from '../../units.js';
import type { Span } from './span.js';

/** A second-order section, b0 + b1·z⁻¹ + b2·z⁻² over 1 + a1·z⁻¹ + a2·z⁻². */
export interface Section {
  b0: number;
  b1: number;
  b2: number;
  a1: number;
  a2: number;
}

/** What the sections below forget in this time cannot be heard: e^−18 for 60 Hz and Q 5. */
const SETTLING = 0.5;

/**
 * Sections after the W3C Audio EQ Cookbook (R. Bristow-Johnson): low-pass, high-pass, and band-pass of 0 dB peak.
 * Frequencies above 0.45 of the sample rate are taken as that.
 */
export function section(
  kind: 'lowPass' | 'highPass' | 'bandPass',
  frequency: Hertz,
  q: number,
  sampleRate: Hertz
): Section {
  const w = 2 * Math.PI * Math.min(0.45, frequency / sampleRate);
  const alpha = Math.sin(w) / (2 * q);
  const cos = Math.cos(w);
  const a0 = 1 + alpha;
  const a = { a1: (-2 * cos) / a0, a2: (1 - alpha) / a0 };
  if (kind === 'bandPass') return { b0: alpha / a0, b1: 0, b2: -alpha / a0, ...a };
  const edge = kind === 'lowPass' ? 1 - cos : -(1 + cos);
  return { b0: Math.abs(edge) / (2 * a0), b1: edge / a0, b2: Math.abs(edge) / (2 * a0), ...a };
}

/**
 * Sends a signal through a section: adds `gain` times what comes out to `sum`, or makes a new array. In a loop the
 * section is in its steady state, so that its output joins at the seam: it is first run over the last half second.
 * Otherwise it starts from rest.
 */
export function filter(
  signal: Float32Array,
  { b0, b1, b2, a1, a2 }: Section,
  { sampleRate, cyclic }: Pick<Span, 'sampleRate' | 'cyclic'>,
  gain = 1,
  sum: Float32Array = new Float32Array(signal.length)
): Float32Array {
  const length = signal.length;
  let s1 = 0;
  let s2 = 0;
  const settling = cyclic ? Math.round(SETTLING * sampleRate) : 0;
  for (let i = -settling; i < 0; i++) {
    const x = signal[(((i % length) + length) % length) | 0];
    const y = b0 * x + s1;
    s1 = b1 * x - a1 * y + s2;
    s2 = b2 * x - a2 * y;
  }
  for (let i = 0; i < length; i++) {
    const x = signal[i];
    const y = b0 * x + s1;
    s1 = b1 * x - a1 * y + s2;
    s2 = b2 * x - a2 * y;
    sum[i] += gain * y;
  }
  return sum;
}
