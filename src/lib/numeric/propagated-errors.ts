/** Share of a reading's error by which it is moved to see what follows: small, so that the answer is linear. */
const PART = 1e-3;

/**
 * What small independent errors of readings make of what is worked out of them: √Σ(∂y/∂x·δx)², the derivatives by central
 * differences (Joint Committee for Guides in Metrology, JCGM 100:2008, § 5.1.2). Right as long as the answer is straight over the width of
 * the errors.
 *
 * @param of what is worked out, any number of figures
 * @param errors as many as readings, at least 0; standard errors give standard errors
 */
export function propagatedErrors(
  of: (readings: readonly number[]) => readonly number[],
  readings: readonly number[],
  errors: readonly number[]
): number[] {
  const squares = of(readings).map(() => 0);
  errors.forEach((error, i) => {
    if (error === 0) return;
    const moved = (by: number) => of(readings.with(i, readings[i] + by * error));
    const [above, below] = [moved(PART), moved(-PART)];
    squares.forEach((_, k) => (squares[k] += ((above[k] - below[k]) / (2 * PART)) ** 2));
  });
  return squares.map(Math.sqrt);
}
