/** One after the other, a few at a time: the next begins when one is done. */
export async function fewAtATime<Item>(
  items: readonly Item[],
  atOnce: number,
  deed: (item: Item) => Promise<void>
): Promise<void> {
  const waiting = [...items];
  const work = async (): Promise<void> => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) await deed(next);
  };
  await Promise.all(Array.from({ length: atOnce }, work));
}
