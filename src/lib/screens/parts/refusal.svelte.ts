/**
 * One sentence about what was refused, until something else is accepted. Where `of` is given, it goes, too, when that
 * value changes in another way.
 */
export class Refusal {
  #refused = $state.raw<{ sentence: string; of: unknown } | null>(null);
  #of: () => unknown;

  constructor(of: () => unknown = () => null) {
    this.#of = of;
  }

  get sentence(): string | null {
    return this.#refused && this.#refused.of === this.#of() ? this.#refused.sentence : null;
  }

  /** Takes the answer of a command: a sentence, or null where it was done. Returns whether it was. */
  take(sentence: string | null): boolean {
    this.#refused = sentence === null ? null : { sentence, of: this.#of() };
    return sentence === null;
  }
}
