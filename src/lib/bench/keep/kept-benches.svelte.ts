import type { Autosave } from './autosave.js';
import type { BenchStore } from './bench-store.js';
import { adopt, disown } from './keeping.js';
import type { KeptBench } from './kept-bench.js';
import type { KeptRecordings } from './kept-recordings.js';
import type { KeptList } from './kept-list.svelte.js';
import type { KeptStatus } from './kept-status.svelte.js';
import type { Ownership } from './ownership.js';
import type { TabChannel } from './tab-channel.js';

/** What the benches in the store are worked on with. */
export interface KeptBenchesParts {
  store: BenchStore;
  autosave: Autosave;
  ownership: Ownership;
  list: KeptList;
  status: KeptStatus;
  channel: Pick<TabChannel, 'tell'>;
  recordings: KeptRecordings;
}

/** What can be done with the benches in the store: open, name, delete them and bring one back. */
export class KeptBenches {
  /** The bench that was deleted last; it can be brought back until the page is closed. */
  deleted = $state.raw<KeptBench | null>(null);

  #parts: KeptBenchesParts;
  /** The recording that was deleted with it. */
  #deletedRecording: File | null = null;

  constructor(parts: KeptBenchesParts) {
    this.#parts = parts;
  }

  /** Opens a bench of the list in the place of this one, which stays one step back. */
  async open(id: string): Promise<void> {
    const { autosave, list, ownership, status, store } = this.#parts;
    if (id === ownership.keeping.id) return;
    await status.asked(async () => {
      await autosave.flush();
      const kept = await store.read(id);
      if (kept) ownership.putKept(kept);
      else status.fileProblem = 'This bench is no longer in the browser’s store.';
      await list.refresh();
    });
  }

  /** Opens the demo bench as it came. */
  openDemo(): void {
    this.#parts.ownership.putDemo();
  }

  /** Opens the demo on the layout as it came. */
  openLayoutDemo(): void {
    this.#parts.ownership.putLayoutDemo();
  }

  /** Goes on under another name; what was kept under the old one stays as it is. */
  async saveUnder(name: string): Promise<string | null> {
    const { autosave, list, ownership, status } = this.#parts;
    const wanted = list.accept(name);
    if ('refused' in wanted) return wanted.refused;
    autosave.drop(ownership.keeping);
    ownership.renew(wanted.name);
    await this.#keepNow();
    status.said = `Kept as “${wanted.name}”.`;
    return null;
  }

  async rename(name: string): Promise<string | null> {
    const { list, ownership } = this.#parts;
    const wanted = list.accept(name, ownership.keeping.id);
    if ('refused' in wanted) return wanted.refused;
    ownership.call(wanted.name);
    await this.#keepNow();
    return null;
  }

  /** Deletes a bench from the browser's store. The one on the bench makes room for the demo bench. */
  async remove(id: string): Promise<void> {
    const { autosave, channel, list, ownership, recordings, status, store } = this.#parts;
    await status.asked(async () => {
      await autosave.flush();
      const kept = await store.read(id);
      const keeping = ownership.known(id);
      if (keeping) autosave.drop(keeping);
      if (id === ownership.keeping.id) ownership.putDemo();
      // At once, so that an undo while the store is busy keeps it anew.
      if (keeping) disown(keeping);
      await autosave
        .inTurn(() => store.remove(id))
        .catch((error: unknown) => {
          if (keeping && kept) adopt(keeping, kept);
          throw error;
        });
      channel.tell({ id, stamp: null });
      this.deleted = kept;
      await list.refresh();
      this.#deletedRecording = await recordings.read(id).catch(() => null);
      await recordings.remove(id);
    });
  }

  /** Puts the bench that was deleted last back into the store. */
  async bringBack(): Promise<void> {
    const { list, ownership, recordings, status, store } = this.#parts;
    const kept = this.deleted;
    if (!kept) return;
    await status.asked(async () => {
      // Undo may have brought it back before.
      await store.write(kept);
      if (this.#deletedRecording) await recordings.keep(kept.id, this.#deletedRecording);
      const [keeping, back] = [ownership.known(kept.id), await store.read(kept.id)];
      if (keeping && back) adopt(keeping, back);
      this.deleted = null;
      await list.refresh();
    });
  }

  async #keepNow(): Promise<void> {
    const { autosave, ownership } = this.#parts;
    autosave.note(ownership.keeping, ownership.file);
    await autosave.flush();
  }
}
