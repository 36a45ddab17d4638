import { tick, untrack } from 'svelte';
import type { Bench } from '../bench.svelte.js';
import { Autosave, type Outcome } from './autosave.js';
import { browserDisk, type BenchDisk } from './bench-disk.js';
import { BenchFiles } from './bench-files.js';
import { UNNAMED } from './bench-name.js';
import { BenchStore, browserStore, storeSentence } from './bench-store.js';
import { carryOver, EmergencySave } from './emergency-save.js';
import type { Keeping } from './keeping.js';
import { KeptRecordings } from './kept-recordings.js';
import { KeptBenches } from './kept-benches.svelte.js';
import { KeptList } from './kept-list.svelte.js';
import { KeptStatus } from './kept-status.svelte.js';
import { Ownership } from './ownership.js';
import { isFetching, noteReturning, showBench, watchPage } from './page-life.js';
import { BrowserChannel, type TabChannel } from './tab-channel.js';
import { TabConflict } from './tab-conflict.js';
import { TabMemory } from './tab-memory.js';

/** What benches are kept with: in the page the browser's own, in tests parts in memory. */
export interface KeeperParts {
  store: BenchStore;
  emergency: EmergencySave;
  memory: Pick<TabMemory, 'bench'>;
  channel: TabChannel;
  disk: BenchDisk;
  recordings: KeptRecordings;
}

/** What this browser keeps benches with. */
export function browserParts(): KeeperParts {
  return {
    store: new BenchStore(browserStore('backwave')),
    emergency: new EmergencySave(),
    memory: new TabMemory(),
    channel: new BrowserChannel(),
    disk: browserDisk,
    recordings: new KeptRecordings(browserStore('backwave-recordings'))
  };
}

/**
 * Keeps the bench safe: in the browser's store soon after every change, under its name, and in files when asked.
 * The name belongs to what is on the bench: undoing past the opening of a bench brings back the earlier one with
 * its name, and both stay kept (docs/decisions/0011-where-benches-live.md).
 */
export class Keeper {
  /** How the bench is kept, for the eye. */
  readonly status = new KeptStatus();
  /** The benches in the store. */
  readonly list: KeptList;
  readonly benches: KeptBenches;
  readonly files: BenchFiles;
  /** One comes back, and the bench is not yet the one that was left: nothing need be worked out for it. */
  fetching = $state(isFetching());
  /** What other tabs do to the bench. */
  readonly conflict: TabConflict;

  #bench: Pick<Bench, 'canUndo'>;
  #parts: KeeperParts;
  #autosave: Autosave;
  #ownership: Ownership;

  constructor(bench: Pick<Bench, 'work' | 'open' | 'restore' | 'canUndo'>, parts: KeeperParts) {
    const { store, channel, disk, recordings } = parts;
    const { status } = this;
    this.#bench = bench;
    this.#parts = parts;
    const autosave = (this.#autosave = new Autosave(store, parts.emergency, this.#told));
    const ownership = (this.#ownership = new Ownership(bench, status, this.#turned));
    const list = (this.list = new KeptList(store));
    const benches = (this.benches = new KeptBenches({
      store,
      autosave,
      ownership,
      list,
      status,
      channel,
      recordings
    }));
    this.files = new BenchFiles({ disk, store, ownership, list, status });
    this.conflict = new TabConflict({ store, autosave, ownership, list, status, benches });
  }

  /** Keeps in step with the bench and with the other tabs. Call while a component starts. */
  connect(): void {
    // The store is asked before the page is alive: what it answers comes after that in any case.
    if (typeof document !== 'undefined') void this.start().finally(() => tick().then(showBench));
    $effect(() => {
      void this.#ownership.file;
      untrack(() => this.look());
    });
    $effect(() => {
      const hangUp = this.listen();
      const end = watchPage({
        hidden: () => void this.#autosave.flush(),
        shown: () => void this.conflict.look(),
        left: () => this.leave()
      });
      return () => {
        end();
        void this.#autosave.flush();
        hangUp();
      };
    });
  }

  /** Hears the other tabs until the function that is returned is called. */
  listen(): () => void {
    return this.#parts.channel.open((told) => this.conflict.hear(told));
  }

  /** Brings back the bench that was on last. */
  async start(): Promise<void> {
    const { store, emergency, memory } = this.#parts;
    try {
      const renamed = await carryOver(store, emergency);
      const id = memory.bench ?? (await store.last());
      const kept = id === null ? null : await store.read(id);
      if (kept) this.#ownership.putKept(kept, !this.#bench.canUndo);
      if (renamed.length > 0)
        this.status.said = `Another tab had the last word on a bench; what was changed here is kept as “${renamed.join('”, “')}”.`;
      await this.list.refresh();
    } catch (error) {
      this.status.refuse(storeSentence(error));
    }
    this.#ownership.settled = true;
    this.fetching = false;
    this.look();
  }

  /** Looks at what is on the bench, whose it is, and notes it to be kept. */
  look(): void {
    const ownership = this.#ownership;
    const keeping = ownership.follow();
    if (!ownership.settled) return;
    if (ownership.untouched) return this.status.show(keeping);
    if (keeping.demo) ownership.call(this.list.freeName(UNNAMED));
    this.#autosave.note(keeping, ownership.file);
    this.status.show(keeping);
    this.status.waits();
  }

  /** Keeps at once what can be kept of a page that is going. */
  leave(): void {
    this.look();
    this.#autosave.saveInEmergency();
    void this.#autosave.flush();
  }

  /** Makes sure that the work is kept before the page goes; rejects where it is not. */
  async makeSure(): Promise<void> {
    this.look();
    await this.#autosave.flush();
    const { state, problem } = this.status;
    if (state === 'refused') throw new Error(problem ?? 'the bench is not kept');
  }

  #turned = ({ id }: Keeping): void => {
    const { memory, store } = this.#parts;
    memory.bench = id;
    // What refuses this refuses the bench itself, too, and that is told.
    store.setLast(id).catch(() => undefined);
  };

  #told = (keeping: Keeping, outcome: Outcome): void => {
    const { status } = this;
    if (outcome.kind === 'kept') {
      status.problem = null;
      noteReturning();
      this.list.noteKept(keeping);
      this.#parts.channel.tell({ id: keeping.id, stamp: keeping.stamp });
    }
    if (keeping !== this.#ownership.keeping) return;
    status.show(keeping);
    if (outcome.kind === 'kept') status.state = 'kept';
    if (outcome.kind === 'refused') status.refuse(outcome.sentence);
  };
}
