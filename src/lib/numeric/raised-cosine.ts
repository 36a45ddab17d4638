/**
 * A fade by half a cosine: ½·(1 − cos πx), 0 up to x = 0 and 1 from x = 1 on. Its slope is 0 at both ends, so that
 * neither value nor slope jumps there.
 */
export function raisedCosine(x: number): number {
  return x <= 0 ? 0 : x >= 1 ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * x);
}
