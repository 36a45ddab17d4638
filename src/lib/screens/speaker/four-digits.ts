/** A figure in four digits at most, as it is written in a field. */
export function fourDigits(value: number): string {
  return String(Number(value.toPrecision(4)));
}
