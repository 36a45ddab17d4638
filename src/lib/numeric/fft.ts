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
    const half = this.size / 2;
    const [time, z, cosines, sines] = [this.#time, this.#spectrum, this.#cos, this.#sin];
    for (let i = 0; i < this.size; i++) time[i] = x[i];
    this.#half.transform(z, time);
    for (let k = 0; k <= half; k++) {
      const i = k === half ? 0 : 2 * k;
      const j = k === 0 ? 0 : 2 * (half - k);
      const evenRe = (z[i] + z[j]) / 2;
      const evenIm = (z[i + 1] - z[j + 1]) / 2;
      const oddRe = (z[i + 1] + z[j + 1]) / 2;
      const oddIm = (z[j] - z[i]) / 2;
      const [cos, sin] = [cosines[k], sines[k]];
      out.re[k] = evenRe + cos * oddRe + sin * oddIm;
      out.im[k] = evenIm + cos * oddIm - sin * oddRe;
    }
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
    const half = this.size / 2;
    const [time, z, cosines, sines] = [this.#time, this.#spectrum, this.#cos, this.#sin];
    for (let k = 0; k < half; k++) {
      const mirror = half - k;
      const im = k === 0 ? 0 : h.im[k];
      const mirrorIm = k === 0 ? 0 : h.im[mirror];
      const evenRe = (h.re[k] + h.re[mirror]) / 2;
      const evenIm = (im - mirrorIm) / 2;
      const turnedRe = (h.re[k] - h.re[mirror]) / 2;
      const turnedIm = (im + mirrorIm) / 2;
      const [cos, sin] = [cosines[k], sines[k]];
      z[2 * k] = evenRe - cos * turnedIm - sin * turnedRe;
      z[2 * k + 1] = evenIm + cos * turnedRe - sin * turnedIm;
    }
    this.#half.inverseTransform(time, z);
    for (let i = 0; i < this.size; i++) out[i] = time[i];
    return out;
  }

  #check(samples: number, bins: number): void {
    if (samples !== this.size || bins !== this.size / 2 + 1)
      throw new RangeError(
        `this FFT takes ${this.size} samples and ${this.size / 2 + 1} bins, got ${samples} and ${bins}`
      );
  }
}
