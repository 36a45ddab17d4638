import type { KeptBench } from './kept-bench.js';
import { newStamp } from './new-stamp.js';

/** A bench that the page could not bring into the store any more before it was left. */
export interface Breath extends Pick<KeptBench, 'id' | 'name' | 'text'> {
  /** The stamps under which this tab had read or written it, or tried to; none where it was never in the store. */
  known: string[];
}

const PREFIX = 'backwave last breath ';

type Shelf = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

/**
 * What is changed within the last moment before a page is left. The large store answers too late for that, the small one
 * at once; what lies in it is carried over when the page is opened next.
 */
export class LastBreath {
  #shelf: () => Shelf;
  #tab = newStamp();

  /** `shelf` may throw: a browser that keeps nothing refuses the very sight of its store. */
  constructor(shelf: () => Shelf = () => localStorage) {
    this.#shelf = shelf;
  }

  leave(breath: Breath): void {
    this.#try((shelf) => shelf.setItem(this.#key(breath.id), JSON.stringify(breath)));
  }

  /** Takes back what this tab has left of a bench. */
  takeBack(id: string): void {
    this.forget(this.#key(id));
  }

  forget(key: string): void {
    this.#try((shelf) => shelf.removeItem(key));
  }

  /** What any tab has left, by the key with which it is forgotten. */
  found(): Map<string, Breath> {
    const found = new Map<string, Breath>();
    this.#try((shelf) => {
      for (let i = 0; i < shelf.length; i++) {
        const key = shelf.key(i);
        const breath = key?.startsWith(PREFIX) ? read(shelf.getItem(key)) : null;
        if (key && breath) found.set(key, breath);
      }
    });
    return found;
  }

  #key(id: string): string {
    return `${PREFIX}${this.#tab} ${id}`;
  }

  #try(deed: (shelf: Shelf) => void): void {
    try {
      deed(this.#shelf());
    } catch {
      // Full or refused: the sentence about the large store has said so already.
    }
  }
}

function read(text: string | null): Breath | null {
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
