/**
 * The median time of one call, in milliseconds: after a warm-up, over at least five calls and about
 * `budgetMs`; short operations are taken many at a time, as the clock is coarse.
 * @param {() => unknown} operation
 * @param {{ once?: boolean, budgetMs?: number }} [options] `once`: a single call, no warm-up
 * @returns {number}
 */
export function medianMs(operation, { once = false, budgetMs = 500 } = {}) {
  const first = timed(operation, 1);
  if (once) return first;
  let calls = 1;
  while (calls < 1e6 && timed(operation, calls) < 2) calls *= 2;
  const end = performance.now() + budgetMs;
  const times = [];
  while (times.length < 5 || performance.now() < end) times.push(timed(operation, calls) / calls);
  return times.sort((a, b) => a - b)[times.length >> 1];
}

/**
 * @param {() => unknown} operation
 * @param {number} calls
 */
function timed(operation, calls) {
  const begun = performance.now();
  for (let i = 0; i < calls; i++) operation();
  return performance.now() - begun;
}
