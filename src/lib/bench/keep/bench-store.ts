import { createStore, del, get, update, values, type UseStore } from 'idb-keyval';
import { isKeptBench, newStamp, type KeptBench } from './kept-bench.js';

/** The little that keeping benches needs of a store; in the page it is IndexedDB, in tests a map. */
export interface KeyValue {
  get(key: string): Promise<unknown>;
  values(): Promise<unknown[]>;
  /** Replaces a value by what `change` makes of it, in one go: nobody writes in between. If it throws, nothing is written. */
  update(key: string, change: (before: unknown) => unknown): Promise<void>;
  del(key: string): Promise<void>;
}

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

/** One sentence for what the browser's store refused: what happened, what is not kept and what to do. */
export function storeSentence(error: unknown): string {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  if (name === 'QuotaExceededError')
    return 'The browser’s store is full: your last changes are not kept in it. Go on working and save this bench to a file, or delete benches you no longer need.';
  return 'This browser lets nothing be kept (a private window may be the reason): this bench is gone when the page is closed. Go on working and save it to a file.';
}

/** The browser's own store. Where it is missing or refused, every call rejects and none throws. */
export function browserStore(name: string): KeyValue {
  let opened: UseStore | undefined;
  const store = () => (opened ??= createStore(name, 'kept'));
  return {
    get: async (key) => get<unknown>(key, store()),
    values: async () => values<unknown>(store()),
    update: async (key, change) => update<unknown>(key, change, store()),
    del: async (key) => del(key, store())
  };
}
