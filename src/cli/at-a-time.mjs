/**
 * Lets at most so many tasks run at a time; the others wait in the order in which they came.
 * @param {number} most
 * @returns {<T>(task: () => Promise<T>) => Promise<T>}
 */
export function atATime(most) {
  /** @type {(() => void)[]} */
  const waiting = [];
  let running = 0;
  return async (task) => {
    if (running >= most) await /** @type {Promise<void>} */ (new Promise((resolve) => waiting.push(resolve)));
    else running++;
    try {
      return await task();
    } finally {
      // Its place goes to the next one, or is free.
      const next = waiting.shift();
      if (next) next();
      else running--;
    }
  };
}
