import type { Hertz } from '../units.js';
import { kWeighting, type Section } from './k-weighting.js';

/**
 * By how much the K-weighting of ITU-R BS.1770-5 multiplies the power at each frequency: |H(z)|² of its two sections at z = e^{j2πf/rate}.
 *
 * @param frequency Hz, 0 … half the sample rate
 * @throws RangeError for a sample rate outside 8 … 192 kHz
 */
export function kWeightedPower(frequency: Float64Array, sampleRate: Hertz): Float64Array {
  const sections = kWeighting(sampleRate);
  return frequency.map((f) => {
    const angle = (2 * Math.PI * f) / sampleRate;
    return sections.reduce((power, section) => power * squared(section, angle), 1);
  });
}

function squared({ b, a }: Section, angle: number): number {
  return magnitude(b, angle) / magnitude(a, angle);
}

function magnitude(c: readonly [number, number, number], angle: number): number {
  const re = c[0] + c[1] * Math.cos(angle) + c[2] * Math.cos(2 * angle);
  const im = c[1] * Math.sin(angle) + c[2] * Math.sin(2 * angle);
  return re * re + im * im;
}
