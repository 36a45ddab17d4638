export interface Tolerance {
  /** Largest accepted |got − expected|. */
  abs?: number;
  /** Largest accepted |got − expected| as a share of |expected|. */
  rel?: number;
  /** Why this tolerance is the right one. */
  because: string;
}

/**
 * Throws unless `got` is within `abs` or within `rel`·|expected| of `expected` (either suffices; with neither
 * given they must be equal). NaN is never close to anything; an infinity only to itself.
 */
export function close(got: number, expected: number, { abs = 0, rel = 0, because }: Tolerance): void {
  const miss = Math.abs(got - expected);
  const allowed = Math.max(abs, rel * Math.abs(expected));
  if (got === expected) return;
  if (Number.isFinite(expected) && miss <= allowed) return;
  throw new Error(`got ${got}, expected ${expected}: off by ${miss}, allowed ${allowed} (${because})`);
}
