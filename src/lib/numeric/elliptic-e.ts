/**
 * Complete elliptic integral of the second kind, E(m) = ∫₀^{π/2} √(1 − m·sin²θ) dθ, by the
 * arithmetic-geometric mean: E = K·(1 − Σ 2^{n−1}·c_n²), K = π/(2·agm)
 * (M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 17.3.3 and 17.6.3–17.6.4).
 *
 * @param m the parameter m = k², within 0 … 1
 * @throws RangeError outside that range
 */
export function ellipticE(m: number): number {
  if (!(m >= 0 && m <= 1)) throw new RangeError(`elliptic parameter m must be within 0 … 1, got ${m}`);
  if (m === 1) return 1;
  let a = 1;
  let b = Math.sqrt(1 - m);
  let sum = m / 2;
  for (let power = 1; Math.abs(a - b) > 1e-15 * a && power < 2 ** 20; power *= 2) {
    const c = (a - b) / 2;
    const mean = (a + b) / 2;
    b = Math.sqrt(a * b);
    a = mean;
    sum += power * c * c;
  }
  return (Math.PI / (2 * a)) * (1 - sum);
}
