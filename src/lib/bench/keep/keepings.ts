import { adopt, newKeeping, type Keeping } from './keeping.js';
import type { KeptBench } from './kept-bench.js';

/** The benches that this tab has had on its bench, by id: one keeping each, however often it was opened. */
export class Keepings {
  #byId = new Map<string, Keeping>();

  get(id: string): Keeping | undefined {
    return this.#byId.get(id);
  }

  add(keeping: Keeping): void {
    this.#byId.set(keeping.id, keeping);
  }

  forget(id: string): void {
    this.#byId.delete(id);
  }

  /** The keeping of what was read from the store. */
  of(kept: KeptBench): Keeping {
    const known = this.#byId.get(kept.id);
    if (known) return known;
    const keeping = { ...newKeeping(kept.name), id: kept.id };
    adopt(keeping, kept);
    return keeping;
  }
}
