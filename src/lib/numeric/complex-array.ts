/** A complex sequence in two parallel arrays of equal length. */
export interface ComplexArray {
  re: Float64Array;
  im: Float64Array;
}

/** A complex sequence of `length` zeros. */
export function complexArray(length: number): ComplexArray {
  return { re: new Float64Array(length), im: new Float64Array(length) };
}
