/**
 * Middles of things that stand in a row without touching, each as near as can be to the middle of its own column; the row is `total`
 * wide and has as many equal columns. Where the room does not suffice they are spread evenly over it. The sum of the squares of the
 * ways by which they are moved is the least (isotonic regression by pooling neighbours: R. E. Barlow and others, Statistical
 * Inference under Order Restrictions, 1972).
 *
 * @param widths all more than 0
 * @param gap least room between neighbours, ≥ 0
 */
export function sideBySide(widths: readonly number[], total: number, gap: number): number[] {
  if (widths.length === 0) return [];
  const needed = widths.reduce((sum, width) => sum + width, 0) + gap * (widths.length - 1);
  const between = needed > total ? gap - (needed - total) / Math.max(1, widths.length - 1) : gap;
  // How far each middle stands from the first one's left edge where all stand as close as may be.
  const closest = widths.map(
    (width, i) => widths.slice(0, i).reduce((sum, one) => sum + one + between, 0) + width / 2
  );
  const spare = Math.max(0, total - needed);
  const pools: { sum: number; count: number }[] = [];
  for (const [i, own] of closest.entries()) {
    let pool = { sum: (total * (i + 0.5)) / widths.length - own, count: 1 };
    for (
      let last = pools.at(-1);
      last && last.sum / last.count > pool.sum / pool.count;
      last = pools.at(-1)
    ) {
      pools.pop();
      pool = { sum: pool.sum + last.sum, count: pool.count + last.count };
    }
    pools.push(pool);
  }
  const moved = pools.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
  return closest.map((own, i) => own + Math.min(spare, Math.max(0, moved[i])));
}

/** Where the part of the row begins and ends that belongs to each: midway between the edges of neighbours, and to both ends. */
export function partsOf(
  middles: readonly number[],
  widths: readonly number[],
  total: number
): { from: number; to: number }[] {
  const bounds = middles.slice(1).map((middle, i) => {
    const [right, left] = [middles[i] + widths[i] / 2, middle - widths[i + 1] / 2];
    return (right + left) / 2;
  });
  return middles.map((_, i) => ({ from: bounds[i - 1] ?? 0, to: bounds[i] ?? total }));
}
