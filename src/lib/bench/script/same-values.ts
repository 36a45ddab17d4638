/** Hands out the same value for equal ones, so that a copy is no change to whoever looks at the value itself. */
export class SameValues {
  #known = new Map<string, unknown>();

  of = <T>(value: T): T => {
    const text = JSON.stringify(value);
    const known = this.#known.get(text);
    if (known !== undefined) return known as T;
    this.#known.set(text, value);
    return value;
  };

  forget(): void {
    this.#known.clear();
  }
}
