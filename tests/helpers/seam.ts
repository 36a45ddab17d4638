import { filter, section } from '../../src/lib/sounds/blocks/filter.js';

/**
 * How rough the seam of a loop is: value step, slope step and energy above 8 kHz within 5 ms of the seam, each as a
 * share of what 99.9 % of all other places of the loop stay below. A seamless loop stays below 1; one cut anywhere
 * seldom does.
 */
export function seam(
  loop: Float32Array,
  sampleRate: number
): { step: number; slope: number; treble: number } {
  const { length } = loop;
  const at = (i: number) => loop[(i + length) % length];
  const step = (i: number) => Math.abs(at(i) - at(i - 1));
  const slope = (i: number) => Math.abs(at(i + 1) - 2 * at(i) + at(i - 1));
  const high = highs(loop, sampleRate);
  const stretch = Math.round(0.005 * sampleRate);
  const energy = (i: number) => {
    let sum = 0;
    for (let n = 0; n < stretch; n++) sum += high[(i + n) % length] ** 2;
    return sum;
  };
  const usual = (size: (i: number) => number, every: number) => {
    const count = Math.floor((length - 3 * stretch) / every);
    const sizes = Float64Array.from({ length: count }, (_, n) => size(stretch + n * every)).sort();
    return sizes[Math.floor(0.999 * count)];
  };
  return {
    step: step(0) / usual(step, 5),
    slope: Math.max(slope(0), slope(length - 1)) / usual(slope, 5),
    treble: energy(length - Math.floor(stretch / 2)) / usual(energy, Math.floor(stretch / 2))
  };
}

/** What lies above 8 kHz, the loop taken round: a fourth-order high-pass in its steady state. */
function highs(loop: Float32Array, sampleRate: number): Float32Array {
  const once = filter(loop, section('highPass', 8000, 0.54, sampleRate), { sampleRate, cyclic: true });
  return filter(once, section('highPass', 8000, 1.31, sampleRate), { sampleRate, cyclic: true });
}
