/**
 * A least-recently-used cache: remembers so many values, or values of so much weight, by key; the one that was used
 * longest ago is forgotten.
 */
export class LruCache<Value> {
  readonly #most: number;
  readonly #forgotten?: (key: string) => void;
  readonly #weigh: (value: Value) => number;
  readonly #values = new Map<string, Value>();

  /**
   * @param most number of values, or with `weigh` the sum of their weights; the newest stays, however heavy
   * @param forgotten is told of every key that makes room for another
   */
  constructor(most: number, forgotten?: (key: string) => void, weigh: (value: Value) => number = () => 1) {
    this.#most = most;
    this.#forgotten = forgotten;
    this.#weigh = weigh;
  }

  /** The one used longest ago first. */
  get keys(): string[] {
    return [...this.#values.keys()];
  }

  get(key: string): Value | undefined {
    const value = this.#values.get(key);
    // What is asked for becomes the newest.
    if (value !== undefined) this.#put(key, value);
    return value;
  }

  set(key: string, value: Value): void {
    this.#put(key, value);
    let weight = 0;
    for (const one of this.#values.values()) weight += this.#weigh(one);
    for (const [oldest, one] of this.#values) {
      if (weight <= this.#most || oldest === key) return;
      weight -= this.#weigh(one);
      this.#values.delete(oldest);
      this.#forgotten?.(oldest);
    }
  }

  delete(key: string): void {
    this.#values.delete(key);
  }

  #put(key: string, value: Value): void {
    this.#values.delete(key);
    this.#values.set(key, value);
  }
}
