/** A complex number. */
export interface Complex {
  re: number;
  im: number;
}
