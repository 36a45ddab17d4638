/**
 * The least value of low … high at which something holds that goes on holding from there, by halving: at most `within` too large. It is taken to
 * hold at `high`.
 */
export function leastWhere(
  [low, high]: readonly [number, number],
  within: number,
  holds: (value: number) => boolean
): number {
  while (high - low > within) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}
