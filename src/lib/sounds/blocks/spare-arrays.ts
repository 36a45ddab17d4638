/**
 * Arrays of one length to work in. What is given back is used again: a new array costs more than what is done with it, since its memory
 * is fetched page by page.
 */
export class SpareArrays {
  readonly #length: number;
  readonly #free: Float32Array[] = [];

  constructor(length: number) {
    this.#length = length;
  }

  /** Zeros. */
  take(): Float32Array {
    return this.#free.pop()?.fill(0) ?? new Float32Array(this.#length);
  }

  /** Nobody reads these any more. */
  giveBack(...arrays: Float32Array[]): void {
    this.#free.push(...arrays);
  }
}
