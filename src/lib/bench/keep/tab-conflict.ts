import { writeBenchFile } from '../../file/write-bench-file.js';
import type { Autosave } from './autosave.js';
import type { BenchStore } from './bench-store.js';
import { adopt, disown, knownStamps } from './keeping.js';
import type { KeptBenches } from './kept-benches.svelte.js';
import type { KeptList } from './kept-list.svelte.js';
import type { KeptStatus } from './kept-status.svelte.js';
import type { Ownership } from './ownership.js';
import { sameWork } from './same-work.js';
import type { Told } from './tab-channel.js';

/** What other tabs are watched with. */
export interface TabConflictParts {
  store: BenchStore;
  autosave: Autosave;
  ownership: Ownership;
  list: KeptList;
  status: KeptStatus;
  benches: Pick<KeptBenches, 'saveUnder'>;
}

/**
 * Other tabs that write or delete the bench that is on here: neither tab overwrites the other, and the user chooses
 * (docs/decisions/0011-where-benches-live.md).
 */
export class TabConflict {
  #parts: TabConflictParts;

  constructor(parts: TabConflictParts) {
    this.#parts = parts;
  }

  /** Another tab tells what it has done. */
  hear({ id, stamp }: Told): void {
    const { list, ownership, status } = this.#parts;
    const keeping = ownership.known(id);
    if (stamp === null && keeping) {
      disown(keeping);
      status.show(ownership.keeping);
      if (keeping === ownership.keeping)
        status.said = 'Another tab has deleted this bench; the next change here keeps it again.';
    } else if (keeping && keeping === ownership.keeping) void this.look();
    list.refresh().catch(() => undefined);
  }

  /** Looks whether another tab has written the bench since. */
  async look(): Promise<void> {
    const { autosave, ownership, status, store } = this.#parts;
    const { keeping } = ownership;
    if (!ownership.settled || keeping.stamp === null || keeping.overtaken) return;
    try {
      await autosave.inTurn(async () => {
        const kept = await store.read(keeping.id);
        if (!kept || keeping !== ownership.keeping || knownStamps(keeping).includes(kept.stamp)) return;
        if (sameWork(kept.text, writeBenchFile(ownership.file))) adopt(keeping, kept);
        else keeping.overtaken = kept;
        status.show(keeping);
      });
    } catch {
      // Nothing was to be kept; the next change asks the store again and tells.
    }
  }

  /** Puts what the other tab has written on the bench; what was there stays one step back. */
  async takeTheirs(): Promise<void> {
    const { autosave, ownership, status, store } = this.#parts;
    const { keeping } = ownership;
    await status.asked(async () => {
      const theirs = (await store.read(keeping.id)) ?? keeping.overtaken;
      if (!theirs || keeping !== ownership.keeping) return;
      autosave.drop(keeping);
      ownership.putKept(theirs);
    });
  }

  /** Goes on with what is on the bench under another name; the other tab's version keeps the old one. */
  async keepMine(): Promise<void> {
    const { benches, list, ownership } = this.#parts;
    const { name } = ownership.keeping;
    await benches.saveUnder(list.freeName(name, [name]));
  }
}
