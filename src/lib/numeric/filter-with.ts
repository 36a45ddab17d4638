import { complexArray, type ComplexArray } from './complex-array.js';
import { RealFft } from './fft.js';

/**
 * The steady state of an endlessly looped sound behind finite impulse responses: the circular convolution
 * y[n] = Σ_m h[m]·x[(n − m) mod loop length], by overlap-save (A. V. Oppenheim and R. W. Schafer,
 * Discrete-Time Signal Processing, section on block convolution). The spectra of the loop's blocks are
 * computed once and kept in single precision (about 16 MB for a minute at 48 kHz and 4096 taps).
 */
export class LoopFilter {
  readonly length: number;
  readonly taps: number;
  readonly #fft: RealFft;
  readonly #hop: number;
  readonly #re: Float32Array;
  readonly #im: Float32Array;
  readonly #time: Float64Array;
  readonly #product: ComplexArray;

  /**
   * @param loop at least one sample; it is not kept
   * @param taps the largest length of an impulse response
   * @throws RangeError for an empty loop or a number of taps that is not a whole number above 0
   */
  constructor(loop: Float32Array, taps: number) {
    if (loop.length === 0) throw new RangeError('a loop must have at least one sample, got 0');
    if (!Number.isInteger(taps) || taps < 1)
      throw new RangeError(`the number of taps must be a whole number above 0, got ${taps}`);
    this.length = loop.length;
    this.taps = taps;
    const size = 2 ** Math.ceil(Math.log2(Math.max(4, Math.min(4 * taps, loop.length + taps - 1))));
    this.#fft = new RealFft(size);
    this.#hop = size - taps + 1;
    const blocks = Math.ceil(loop.length / this.#hop);
    const bins = size / 2 + 1;
    this.#re = new Float32Array(blocks * bins);
    this.#im = new Float32Array(blocks * bins);
    this.#time = new Float64Array(size);
    this.#product = complexArray(bins);
    const [time, spectrum] = [this.#time, this.#product];
    for (let block = 0; block < blocks; block++) {
      // the block begins taps − 1 samples early, wrapped round the loop
      let from = (block * this.#hop - (taps - 1)) % loop.length;
      if (from < 0) from += loop.length;
      for (let i = 0; i < size; i++) {
        time[i] = loop[from];
        if (++from === loop.length) from = 0;
      }
      this.#fft.forward(time, spectrum);
      this.#re.set(spectrum.re, block * bins);
      this.#im.set(spectrum.im, block * bins);
    }
  }

  /**
   * One turn of the loop as it sounds behind `impulseResponse`, as long as the loop, into `out` if it is given.
   *
   * @throws RangeError for an impulse response longer than `taps`
   */
  through(impulseResponse: Float32Array, out: Float32Array = new Float32Array(this.length)): Float32Array {
    if (impulseResponse.length > this.taps)
      throw new RangeError(
        `an impulse response must have at most ${this.taps} samples, got ${impulseResponse.length}`
      );
    const { size } = this.#fft;
    const bins = size / 2 + 1;
    const [time, product] = [this.#time, this.#product];
    time.fill(0).set(impulseResponse);
    const h = this.#fft.forward(time);
    const [blocksRe, blocksIm] = [this.#re, this.#im];
    for (let block = 0, from = 0; from < this.length; block++, from += this.#hop) {
      const offset = block * bins;
      multiplied(
        { re: blocksRe.subarray(offset, offset + bins), im: blocksIm.subarray(offset, offset + bins) },
        h,
        product
      );
      this.#fft.inverse(product, time);
      const count = Math.min(this.#hop, this.length - from);
      out.set(time.subarray(this.taps - 1, this.taps - 1 + count), from);
    }
    return out;
  }
}

/** Two spectra bin by bin, into `product`. */
function multiplied(
  { re, im }: { re: Float32Array; im: Float32Array },
  { re: hRe, im: hIm }: ComplexArray,
  { re: outRe, im: outIm }: ComplexArray
): void {
  for (let k = 0; k < re.length; k++) {
    outRe[k] = re[k] * hRe[k] - im[k] * hIm[k];
    outIm[k] = re[k] * hIm[k] + im[k] * hRe[k];
  }
}
