/** A seeded source of chance: the same seed gives the same sequence on every machine. */
export interface Random {
  /** Evenly spread over 0 (included) … 1 (excluded). */
  uniform(): number;
  /** Normally distributed, mean 0, standard deviation 1. */
  gaussian(): number;
}

/** The step of the Weyl sequence. */
const WEYL = 0x9e3779b9;

/** A number of it, spread over 0 (included) … 1 (excluded). */
function spread(state: number): number {
  let h = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return ((h ^ (h >>> 16)) >>> 0) / 4294967296;
}

/**
 * A generator for any seed (taken as an unsigned 32-bit integer): a 32-bit Weyl sequence passed through the
 * finaliser of MurmurHash3 (A. Appleby, public domain; constants from memory), with the period 2³². Normal
 * values by the polar method (G. Marsaglia and T. A. Bray, SIAM Review 6 (1964) 260).
 */
export function random(seed: number): Random {
  let state = seed | 0;
  let spare: number | null = null;

  const uniform = () => {
    state = (state + WEYL) | 0;
    return spread(state);
  };

  const gaussian = () => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const s = x * x + y * y;
      if (s > 0 && s < 1) {
        const scale = Math.sqrt((-2 * Math.log(s)) / s);
        spare = y * scale;
        return x * scale;
      }
    }
  };

  return { uniform, gaussian };
}

/** Fills an array with size·`random(seed).gaussian()`, value after value: the same ones, two at a time and so a little sooner. */
export function fillWithGaussian(target: Float32Array, seed: number, size: number): void {
  const length = target.length;
  let state = seed | 0;
  for (let n = 0; n < length;) {
    state = (state + WEYL) | 0;
    const x = 2 * spread(state) - 1;
    state = (state + WEYL) | 0;
    const y = 2 * spread(state) - 1;
    const s = x * x + y * y;
    if (s === 0 || s >= 1) continue;
    const scale = Math.sqrt((-2 * Math.log(s)) / s);
    target[n++] = size * (x * scale);
    if (n < length) target[n++] = size * (y * scale);
  }
}
