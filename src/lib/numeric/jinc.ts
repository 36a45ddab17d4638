/**
 * 2·J₁(x)/x, with J₁ the Bessel function: what a round piston sends to a side over what it sends straight ahead, 1 at x = 0.
 *
 * Polynomials of M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), 9.4.4 and 9.4.6: x⁻¹·J₁ within 1.3·10⁻⁸
 * below 3, √x·J₁ within 9·10⁻⁸ above.
 */
export function jinc(x: number): number {
  const size = Math.abs(x);
  if (size <= 3) return 2 * polynomial(BELOW, (size / 3) ** 2);
  const u = 3 / size;
  return (2 * polynomial(AMPLITUDE, u) * Math.cos(size + polynomial(PHASE, u))) / size ** 1.5;
}

const BELOW = [0.5, -0.56249985, 0.21093573, -0.03954289, 0.00443319, -0.00031761, 0.00001109];
const AMPLITUDE = [0.79788456, 0.00000156, 0.01659667, 0.00017105, -0.00249511, 0.00113653, -0.00020033];
const PHASE = [-2.35619449, 0.12499612, 0.0000565, -0.00637879, 0.00074348, 0.00079824, -0.00029166];

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
}
