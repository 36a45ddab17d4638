/** Σ size[n−1]·sin(n·phase), from the sine and cosine of the phase: sin nφ = 2·cos φ·sin (n−1)φ − sin (n−2)φ. */
export function partialSum(phase: number, sizes: number[]): number {
  const twice = 2 * Math.cos(phase);
  let before = 0;
  let now = Math.sin(phase);
  let sum = 0;
  for (const size of sizes) {
    sum += size * now;
    const next = twice * now - before;
    before = now;
    now = next;
  }
  return sum;
}
