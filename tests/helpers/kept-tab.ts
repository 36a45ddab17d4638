import { vi } from 'vitest';
import { Bench } from '../../src/lib/bench/bench.svelte.js';
import type { BenchDisk, FileHandle, Picked } from '../../src/lib/bench/keep/bench-disk.js';
import { BenchStore } from '../../src/lib/bench/keep/bench-store.js';
import { EmergencySave } from '../../src/lib/bench/keep/emergency-save.js';
import { KeptRecordings } from '../../src/lib/bench/keep/kept-recordings.js';
import { Keeper } from '../../src/lib/bench/keep/keeper.svelte.js';
import type { TabChannel, Told } from '../../src/lib/bench/keep/tab-channel.js';
import { memoryShelf, MemoryStore } from './memory-store.js';

/** A file on a disk in memory. */
export function handleOf(name: string): FileHandle & { texts: string[] } {
  const texts: string[] = [];
  return {
    name,
    texts,
    getFile: async () => new File([texts.at(-1) ?? ''], name),
    createWritable: async () => ({
      write: async (text) => void texts.push(text),
      close: async () => undefined
    })
  };
}

/** A disk in memory: what was saved, and what the next picker gives (null: the user closes it; an error: it fails). */
export class MemoryDisk implements BenchDisk {
  readonly saved: { name: string; text: string }[] = [];
  picks: Picked | Error | null = null;
  savesTo: FileHandle | Error | null | 'download' = 'download';

  async pick(): Promise<Picked | null> {
    if (this.picks instanceof Error) throw this.picks;
    return this.picks;
  }

  async save(text: string, fileName: string, handle: FileHandle | null) {
    const to = handle ?? this.savesTo;
    if (to instanceof Error) throw to;
    if (to === null) return null;
    const [name, open] = to === 'download' ? [fileName, null] : [to.name, to];
    this.saved.push({ name, text });
    return { name, handle: open };
  }
}

/** One browser: what its tabs share. */
export class MemoryBrowser {
  readonly backend = new MemoryStore();
  readonly store = new BenchStore(this.backend);
  readonly recordings = new KeptRecordings(new MemoryStore());
  readonly small = memoryShelf();
  /** Whether tabs hear each other. */
  connected = true;
  #ears = new Set<(told: Told) => void>();

  channel(): TabChannel {
    let own: ((told: Told) => void) | null = null;
    return {
      open: (onTold) => {
        own = onTold;
        this.#ears.add(onTold);
        return () => void this.#ears.delete(onTold);
      },
      tell: (told) => {
        if (this.connected) for (const ear of this.#ears) if (ear !== own) ear(told);
      }
    };
  }

  /** Opens a tab, or loads one anew: `bench` is what it had on its bench before. */
  async tab(bench: string | null = null): Promise<Tab> {
    const tab = new Tab(this, bench);
    await tab.keeper.start();
    return tab;
  }
}

/** One tab with its bench and its keeper, without a page. */
export class Tab {
  readonly bench = new Bench();
  readonly disk = new MemoryDisk();
  readonly memory: { bench: string | null };
  readonly keeper: Keeper;
  #browser: MemoryBrowser;
  #hangUp: () => void;

  constructor(browser: MemoryBrowser, bench: string | null) {
    this.#browser = browser;
    this.memory = { bench };
    this.keeper = new Keeper(this.bench, {
      store: browser.store,
      emergency: new EmergencySave(() => browser.small),
      memory: this.memory,
      channel: browser.channel(),
      disk: this.disk,
      recordings: browser.recordings
    });
    this.#hangUp = this.keeper.listen();
  }

  get status() {
    return this.keeper.status;
  }

  /** Does something to the bench, as the page does, and lets the keeper see it. */
  does(deed: (bench: Bench) => unknown): void {
    deed(this.bench);
    this.keeper.look();
  }

  /** Makes the flat plate this many millimetres wide: a change worth keeping. */
  widen(millimetres: number): void {
    this.does((bench) => {
      bench.hear(1);
      bench.turnKnob('width', millimetres / 1000);
    });
  }

  /** How wide the flat plate is, in millimetres. */
  get width(): number {
    const { mount } = this.bench.file.setups[1];
    return mount.kind === 'plate' && mount.shape === 'rectangle' ? Math.round(mount.width * 1e6) / 1000 : NaN;
  }

  names(): string[] {
    return this.keeper.list.entries.map(({ name }) => name);
  }

  /** The id of the kept bench of this name. */
  id(name: string): string {
    return this.keeper.list.entries.find((one) => one.name === name)!.id;
  }

  /** Loads the page anew: what is done at once is done, the rest is never heard of again. */
  async reload(): Promise<Tab> {
    this.keeper.leave();
    this.#hangUp();
    return this.#browser.tab(this.memory.bench);
  }

  /** Closes the page; nothing that is under way comes to its end. */
  close(): void {
    this.keeper.leave();
    this.#hangUp();
    vi.clearAllTimers();
  }
}
