/** The little that keeping benches needs of a store; in the page it is IndexedDB, in tests a map. */
export interface KeyValue {
  get(key: string): Promise<unknown>;
  values(): Promise<unknown[]>;
  /** Replaces a value by what `change` makes of it, in one go: nobody writes in between. If it throws, nothing is written. */
  update(key: string, change: (before: unknown) => unknown): Promise<void>;
  del(key: string): Promise<void>;
}
