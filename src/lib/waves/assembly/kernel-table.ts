/** A kernel sampled evenly over the distance, to be read by linear interpolation. */
export interface KernelTable {
  /** f1.re, f1.im, h.re, h.im of every sample, one after the other, and one sample beyond the last. */
  values: Float64Array;
  /** Number of steps from 0 to `reach`. */
  steps: number;
}

/** Phase from sample to sample: linear interpolation then errs by 10⁻⁵ at most. */
const STEP = 0.01;
const LEAST = 256;

/**
 * The twice-differentiated remainder of Green's function, f(r) = (e^{−jkr} − 1 + jkr + k²r²/2)/r, on 0 … `reach`:
 *
 * - F1 = f′/r = [1 − (1 + jkr)·e^{−jkr}]/r³ + k²/(2r)
 * - H = r·F1′ = [(3 + 3jkr − k²r²)·e^{−jkr} − 3]/r³ − k²/(2r)
 *
 * so that ∂²f/∂n∂n′ = −F1·n·n′ − H·(n·d)(n′·d)/r². Both are smooth and of third order in k. By their series for kr < 1.
 *
 * @param k real wave number, above 0
 * @param loss the loss factor η: the wave number used is k·(1 − jη)
 */
export function kernelTable(k: number, loss: number, reach: number): KernelTable {
  const steps = Math.max(LEAST, Math.ceil((k * reach) / STEP));
  const values = new Float64Array(4 * (steps + 2));
  const size = Math.hypot(1, loss);
  // k³·(1 − jη)³
  const cubeRe = k ** 3 * (1 - 3 * loss * loss);
  const cubeIm = k ** 3 * (loss ** 3 - 3 * loss);
  for (let i = 0; i < steps + 2; i++) {
    const x = (k * reach * i) / steps;
    const [fr, fi, hr, hi] = x * size < 1 ? series(x, -x * loss) : closed(x, -x * loss);
    values[4 * i] = cubeRe * fr - cubeIm * fi;
    values[4 * i + 1] = cubeRe * fi + cubeIm * fr;
    values[4 * i + 2] = cubeRe * hr - cubeIm * hi;
    values[4 * i + 3] = cubeRe * hi + cubeIm * hr;
  }
  return { values, steps };
}

type Pair = [fr: number, fi: number, hr: number, hi: number];

/** F1/k³ = Σ_{n ≥ 3} (n − 1)·(−j)^n·x^{n−3}/n! and H/k³ with the further factor n − 3; x complex. */
function series(xr: number, xi: number): Pair {
  const sum: Pair = [0, 0, 0, 0];
  // (−j)³·x⁰/3!
  let [re, im] = [0, 1 / 6];
  for (let n = 3; n < 24; n++) {
    sum[0] += (n - 1) * re;
    sum[1] += (n - 1) * im;
    sum[2] += (n - 1) * (n - 3) * re;
    sum[3] += (n - 1) * (n - 3) * im;
    // times −j·x/(n + 1)
    [re, im] = [(re * xi + im * xr) / (n + 1), (im * xi - re * xr) / (n + 1)];
  }
  return sum;
}

function closed(xr: number, xi: number): Pair {
  const decay = Math.exp(xi);
  const er = decay * Math.cos(xr);
  const ei = -decay * Math.sin(xr);
  // 1 + jx and 3 + 3jx − x²
  const ar = 1 - xi;
  const ai = xr;
  const br = 3 - 3 * xi - xr * xr + xi * xi;
  const bi = 3 * xr - 2 * xr * xi;
  const pr = 1 - (ar * er - ai * ei);
  const pi = -(ar * ei + ai * er);
  const qr = br * er - bi * ei - 3;
  const qi = br * ei + bi * er;
  const abs = xr * xr + xi * xi;
  // 1/x and 1/x³
  const ir = xr / abs;
  const ii = -xi / abs;
  const sr = ir * ir - ii * ii;
  const si = 2 * ir * ii;
  const cr = sr * ir - si * ii;
  const ci = sr * ii + si * ir;
  return [
    pr * cr - pi * ci + ir / 2,
    pr * ci + pi * cr + ii / 2,
    qr * cr - qi * ci - ir / 2,
    qr * ci + qi * cr - ii / 2
  ];
}
