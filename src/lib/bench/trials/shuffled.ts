/** The same in another order, each order as likely as each other (R. Durstenfeld, Commun. ACM 7 (1964) 420). `uniform` within 0 … 1. */
export function shuffled<T>(all: readonly T[], uniform: () => number): T[] {
  const order = [...all];
  for (let i = order.length - 1; i > 0; i--) {
    const j = Math.floor(uniform() * (i + 1));
    [order[i], order[j]] = [order[j], order[i]];
  }
  return order;
}
