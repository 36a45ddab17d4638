import FFT from 'fft.js';
import { complexArray, type ComplexArray } from './complex-array.js';

/**
 * Discrete Fourier transform of real sequences of a fixed length: X[k] = Σ x[n]·e^{−j2πkn/size},
 * bins 0 … size/2. Two real samples are packed in one complex one, so that a complex transform of half the
 * length does the work (the usual split into even and odd samples). The buffers are kept and used again.
 */
export class RealFft {
  readonly size: number;
  readonly #half: FFT;
  readonly #time: number[];
  readonly #spectrum: number[];
  readonly #cos: Float64Array;
  readonly #sin: Float64Array;

  /** @throws RangeError unless `size` is a power of two of at least 4 */
  constructor(size: number) {
    if (!Number.isInteger(size) || size < 4 || (size & (size - 1)) !== 0)
      throw new RangeError(`FFT size must be a power of two of at least 4, got ${size}`);
    this.size = size;
    this.#half = new FFT(size / 2);
    this.#time = this.#half.createComplexArray();
    this.#spectrum = this.#half.createComplexArray();
    this.#cos = new Float64Array(size / 2 + 1);
    this.#sin = new Float64Array(size / 2 + 1);
    for (let k = 0; k <= size / 2; k++) {
      this.#cos[k] = Math.cos((2 * Math.PI * k) / size);
      this.#sin[k] = Math.sin((2 * Math.PI * k) / size);
    }
  }

  /**
   * The size/2 + 1 bins of `size` real samples, into `out` if it is given.
   *
   * @throws RangeError if the lengths do not fit the transform
   */
  forward(x: Float64Array | Float32Array, out: ComplexArray = complexArray(this.size / 2 + 1)): ComplexArray {
    this.#check(x.length, out.re.length);
    copy(x, this.#time);
    this.#half.transform(this.#spectrum, this.#time);
    bins(this.#spectrum, this.#cos, this.#sin, out);
    return out;
  }

  /**
   * The `size` real samples whose bins 0 … size/2 are `h`, into `out` if it is given. The imaginary parts of
   * the first and the last bin are taken as 0, as they must be for a real sequence.
   *
   * @throws RangeError if the lengths do not fit the transform
   */
  inverse(h: ComplexArray, out: Float64Array = new Float64Array(this.size)): Float64Array {
    this.#check(out.length, h.re.length);
    pairs(h, this.#cos, this.#sin, this.#spectrum);
    this.#half.inverseTransform(this.#time, this.#spectrum);
    copy(this.#time, out);
    return out;
  }

  #check(samples: number, bins: number): void {
    if (samples !== this.size || bins !== this.size / 2 + 1)
      throw new RangeError(
        `this FFT takes ${this.size} samples and ${this.size / 2 + 1} bins, got ${samples} and ${bins}`
      );
  }
}

/** As many as fill the place they go to. */
function copy(from: ArrayLike<number>, to: number[] | Float64Array): void {
  for (let i = 0; i < to.length; i++) to[i] = from[i];
}

/** From the spectrum of the pairs to the bins of the samples. */
function bins(z: number[], cosines: Float64Array, sines: Float64Array, { re, im }: ComplexArray): void {
  const half = re.length - 1;
  for (let k = 0; k <= half; k++) {
    const i = k === half ? 0 : 2 * k;
    const j = k === 0 ? 0 : 2 * (half - k);
    const evenRe = (z[i] + z[j]) / 2;
    const evenIm = (z[i + 1] - z[j + 1]) / 2;
    const oddRe = (z[i + 1] + z[j + 1]) / 2;
    const oddIm = (z[j] - z[i]) / 2;
    const cos = cosines[k];
    const sin = sines[k];
    re[k] = evenRe + cos * oddRe + sin * oddIm;
    im[k] = evenIm + cos * oddIm - sin * oddRe;
  }
}

/** And back. */
function pairs({ re, im }: ComplexArray, cosines: Float64Array, sines: Float64Array, z: number[]): void {
  const half = re.length - 1;
  for (let k = 0; k < half; k++) {
    const mirror = half - k;
    const own = k === 0 ? 0 : im[k];
    const mirrorIm = k === 0 ? 0 : im[mirror];
    const evenRe = (re[k] + re[mirror]) / 2;
    const evenIm = (own - mirrorIm) / 2;
    const turnedRe = (re[k] - re[mirror]) / 2;
    const turnedIm = (own + mirrorIm) / 2;
    const cos = cosines[k];
    const sin = sines[k];
    z[2 * k] = evenRe - cos * turnedIm - sin * turnedRe;
    z[2 * k + 1] = evenIm + cos * turnedRe - sin * turnedIm;
  }
}
