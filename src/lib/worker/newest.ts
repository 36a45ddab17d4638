/** Remembers so many values, by key; the one that was used longest ago is forgotten. */
export class Newest<Value> {
  readonly #most: number;
  readonly #forgotten?: (key: string) => void;
  readonly #values = new Map<string, Value>();

  /** `forgotten` is told of every key that makes room for another. */
  constructor(most: number, forgotten?: (key: string) => void) {
    this.#most = most;
    this.#forgotten = forgotten;
  }

  get(key: string): Value | undefined {
    const value = this.#values.get(key);
    // What is asked for becomes the newest.
    if (value !== undefined) this.#put(key, value);
    return value;
  }

  set(key: string, value: Value): void {
    this.#put(key, value);
    for (const oldest of this.#values.keys()) {
      if (this.#values.size <= this.#most) return;
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
