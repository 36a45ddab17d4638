import { freeName } from './bench-name.js';
import type { BenchStore } from './bench-store.js';
import { newStamp, type KeptBench } from './kept-bench.js';
import { sameWork } from './same-work.js';

/** A bench that the page could not bring into the store any more before it was left. */
export interface Unsaved extends Pick<KeptBench, 'id' | 'name' | 'text'> {
  /** The stamps under which this tab had read or written it, or tried to; none where it was never in the store. */
  known: string[];
}

/** What users' browsers hold lies under this name already: it must not change. */
const PREFIX = 'backwave last breath ';

type SmallStore = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

/**
 * What is changed within the last moment before a page is left. The large store answers too late for that, the small one
 * at once; what lies in it is carried over when the page is opened next.
 */
export class EmergencySave {
  #store: () => SmallStore;
  #tab = newStamp();

  /** `store` may throw: a browser that keeps nothing refuses the very sight of its store. */
  constructor(store: () => SmallStore = () => localStorage) {
    this.#store = store;
  }

  leave(unsaved: Unsaved): void {
    this.#try((store) => store.setItem(this.#key(unsaved.id), JSON.stringify(unsaved)));
  }

  /** Takes back what this tab has left of a bench. */
  takeBack(id: string): void {
    this.forget(this.#key(id));
  }

  forget(key: string): void {
    this.#try((store) => store.removeItem(key));
  }

  /** What any tab has left, by the key with which it is forgotten. */
  found(): Map<string, Unsaved> {
    const found = new Map<string, Unsaved>();
    this.#try((store) => {
      for (let i = 0; i < store.length; i++) {
        const key = store.key(i);
        const unsaved = key?.startsWith(PREFIX) ? read(store.getItem(key)) : null;
        if (key && unsaved) found.set(key, unsaved);
      }
    });
    return found;
  }

  #key(id: string): string {
    return `${PREFIX}${this.#tab} ${id}`;
  }

  #try(deed: (store: SmallStore) => void): void {
    try {
      deed(this.#store());
    } catch {
      // Full or refused: the sentence about the large store has said so already.
    }
  }
}

/**
 * Brings into the store what tabs have left behind when they were closed. What another tab has overtaken gets a
 * name of its own.
 * @returns the names of those that got one.
 */
export async function carryOver(store: BenchStore, emergency: EmergencySave): Promise<string[]> {
  const renamed: string[] = [];
  for (const [key, left] of emergency.found()) {
    const theirs = await store.write(left, left.known);
    if (theirs && !sameWork(theirs.text, left.text)) {
      const taken = (await store.list()).map((kept) => kept.name);
      const name = freeName(left.name, taken);
      await store.write({ id: newStamp(), name, text: left.text });
      renamed.push(name);
    } else if (left.known.length === 0) await store.setLast(left.id);
    emergency.forget(key);
  }
  return renamed;
}

function read(text: string | null): Unsaved | null {
  try {
    const value: unknown = JSON.parse(text ?? '');
    if (typeof value !== 'object' || value === null) return null;
    const { id, name, text: bench, known } = value as Record<string, unknown>;
    if (typeof id !== 'string' || typeof name !== 'string' || typeof bench !== 'string') return null;
    const stamps = Array.isArray(known) ? known.filter((stamp) => typeof stamp === 'string') : [];
    return { id, name, text: bench, known: stamps };
  } catch {
    return null;
  }
}
