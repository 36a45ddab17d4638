import type { KeyValue } from '../../src/lib/bench/keep/bench-store.js';

/** A store in memory for tests; `refuse` makes every write fail with this error, as a full store does. */
export class MemoryStore implements KeyValue {
  readonly held = new Map<string, unknown>();
  refuse: Error | null = null;
  writes = 0;
  /** Awaited between the look and the end of a write. */
  delay: () => Promise<void> = async () => undefined;

  async get(key: string): Promise<unknown> {
    return structuredClone(this.held.get(key));
  }

  async values(): Promise<unknown[]> {
    return structuredClone([...this.held.values()]);
  }

  async update(key: string, change: (before: unknown) => unknown): Promise<void> {
    const next = change(structuredClone(this.held.get(key)));
    if (this.refuse) throw this.refuse;
    this.held.set(key, structuredClone(next));
    this.writes++;
    await this.delay();
  }

  async del(key: string): Promise<void> {
    if (this.refuse) throw this.refuse;
    this.held.delete(key);
  }
}

/** The small store of the browser, as far as keeping benches uses it. */
export function memoryShelf(): Storage {
  const held = new Map<string, string>();
  return {
    get length() {
      return held.size;
    },
    key: (i) => [...held.keys()][i] ?? null,
    getItem: (key) => held.get(key) ?? null,
    setItem: (key, value) => void held.set(key, value),
    removeItem: (key) => void held.delete(key),
    clear: () => held.clear()
  };
}
