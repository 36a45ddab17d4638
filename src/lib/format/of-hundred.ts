/** So many of a hundred; small shares with a decimal. */
export function ofHundred(share: number): string {
  const percent = 100 * share;
  return percent < 0.1 ? 'fewer than 0.1' : percent < 10 ? percent.toFixed(1) : String(Math.round(percent));
}
