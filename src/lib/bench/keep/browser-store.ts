import { createStore, del, get, update, values, type UseStore } from 'idb-keyval';
import type { KeyValue } from './key-value.js';

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
