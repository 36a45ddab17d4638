/** A number in so many digits at most, without zeros at its end. */
export function inDigits(value: number, digits: number): string {
  return String(Number(value.toPrecision(digits)));
}
