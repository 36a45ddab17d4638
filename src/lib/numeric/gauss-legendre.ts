export interface Quadrature {
  /** Nodes within −1 … 1, ascending. */
  nodes: Float64Array;
  /** Weights; they add up to 2. */
  weights: Float64Array;
}

/**
 * Gauss–Legendre quadrature on −1 … 1 with `points` nodes, exact for polynomials of degree 2·points − 1.
 * The nodes are the zeros of the Legendre polynomial P_n, found by Newton's method from
 * cos(π·(i + 3/4)/(n + 1/2)); weights 2/((1 − x²)·P_n′(x)²) (Abramowitz and Stegun 25.4.29 and 22.16.6).
 *
 * @throws RangeError if `points` is not a whole number within 1 … 1000
 */
export function gaussLegendre(points: number): Quadrature {
  if (!Number.isInteger(points) || points < 1 || points > 1000)
    throw new RangeError(`number of quadrature points must be a whole number within 1 … 1000, got ${points}`);
  const nodes = new Float64Array(points);
  const weights = new Float64Array(points);
  for (let i = 0; i < points; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (points + 0.5));
    let slope = 0;
    for (let step = 0; step < 50; step++) {
      let last = 1;
      let p = x;
      for (let n = 2; n <= points; n++) [last, p] = [p, ((2 * n - 1) * x * p - (n - 1) * last) / n];
      slope = (points * (x * p - last)) / (x * x - 1);
      const move = p / slope;
      x -= move;
      if (Math.abs(move) < 1e-15) break;
    }
    nodes[i] = x;
    weights[i] = 2 / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}
