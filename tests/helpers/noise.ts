/** `length` evenly distributed samples within −1 … 1, the same for the same seed (mulberry32). */
export function noise(length: number, seed: number): Float64Array {
  let state = seed >>> 0;
  return Float64Array.from({ length }, () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 31 - 1;
  });
}
