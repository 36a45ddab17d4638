import { isKeptBench, type KeptBench } from './kept-bench.js';
import type { KeyValue } from './key-value.js';
import { newStamp } from './new-stamp.js';

/** Thrown inside a write where somebody else has written since; nothing is written then. */
class Overtaken extends Error {
  constructor(readonly theirs: KeptBench) {
    super('another tab has written this bench');
  }
}

const LAST = 'last';

/** The benches in the store, by id. */
export class BenchStore {
  #backend: KeyValue;

  constructor(backend: KeyValue) {
    this.#backend = backend;
  }

  /** All benches, the latest first. */
  async list(): Promise<KeptBench[]> {
    const kept = (await this.#backend.values()).filter(isKeptBench);
    return kept.sort((a, b) => b.keptAt - a.keptAt);
  }

  async read(id: string): Promise<KeptBench | null> {
    const value = await this.#backend.get(`bench ${id}`);
    return isKeptBench(value) ? value : null;
  }

  /**
   * Writes a bench under the mark `stamp` if what lies in the store is `known` to the writer, by its stamp. A bench that
   * is gone is written anew, as whoever still works on it must not lose it. Look and write are one transaction.
   * @returns null, or what another tab has written in between; then nothing was written.
   */
  async write(
    { id, name, text }: Pick<KeptBench, 'id' | 'name' | 'text'>,
    known: readonly string[] = [],
    stamp = newStamp()
  ): Promise<KeptBench | null> {
    const next: KeptBench = { id, name, text, stamp, keptAt: Date.now() };
    try {
      await this.#backend.update(`bench ${id}`, (before) => {
        if (isKeptBench(before) && !known.includes(before.stamp)) throw new Overtaken(before);
        return next;
      });
    } catch (error) {
      if (error instanceof Overtaken) return error.theirs;
      throw error;
    }
    return null;
  }

  async remove(id: string): Promise<void> {
    await this.#backend.del(`bench ${id}`);
  }

  /** Which bench was on last, in any tab. */
  async last(): Promise<string | null> {
    const value = await this.#backend.get(LAST);
    return typeof value === 'string' ? value : null;
  }

  async setLast(id: string): Promise<void> {
    await this.#backend.update(LAST, () => id);
  }
}
