import { tick, untrack } from 'svelte';
import type { Bench } from '../bench.svelte.js';
import type { BenchFile } from '../../file/bench-file.js';
import { BenchFileError } from '../../file/bench-file-error.js';
import { demoBench } from '../../file/demo-bench.js';
import { readBenchFile } from '../../file/read-bench-file.js';
import { writeBenchFile } from '../../file/write-bench-file.js';
import { sentence } from '../../format/sentence.js';
import { Autosave, type Outcome } from './autosave.js';
import { pickBench, saveText, textOfBench, type FileHandle, type Picked } from './bench-on-disk.js';
import { cleanName, DEMO_NAME, fileNameOf, freeName, nameOfFile, UNNAMED } from './bench-name.js';
import type { BenchStore } from './bench-store.js';
import { carryOver } from './carry-over.js';
import { adopt, demoKeeping, disown, knownStamps, newKeeping, type Keeping } from './keeping.js';
import { Keepings } from './keepings.js';
import type { KeptBench } from './kept-bench.js';
import { listed, type Listed } from './listed.js';
import type { LastBreath } from './last-breath.js';
import { OtherTabs, type Told } from './other-tabs.js';
import { watchPage } from './page-life.js';
import { noteReturning, showBench } from './returning.js';
import { sameWork, workIn } from './same-work.js';
import { storeSentence } from './store-sentence.js';
import type { TabMemory } from './tab-memory.js';

/**
 * How safe the bench is: the demo as it comes, nowhere yet, in the store, there but for the last change, refused by the
 * store, or held back because another tab has written it.
 */
export type KeptState = 'demo' | 'new' | 'kept' | 'waiting' | 'refused' | 'overtaken';

export interface KeeperParts {
  store: BenchStore;
  breath: LastBreath;
  memory: TabMemory;
}

/**
 * Keeps the bench safe: in the browser's store soon after every change, under its name, and in files when asked.
 * The name belongs to what is on the bench: undoing past the opening of a bench brings back the earlier one with
 * its name, and both stay kept (docs/decisions/0011-where-benches-live.md).
 */
export class Keeper {
  name = $state(DEMO_NAME);
  state = $state<KeptState>('demo');
  /** One sentence about what the browser's store refused. */
  problem = $state<string | null>(null);
  /** One sentence about a bench or a file that could not be opened or saved. */
  fileProblem = $state<string | null>(null);
  /** What was done, for the eye and the screen reader. */
  said = $state<string | null>(null);
  list = $state.raw<Listed[]>([]);
  /** Which of the list is on the bench. */
  current = $state<string | null>(null);
  /** The bench that was deleted last; it can be brought back until the page is closed. */
  deleted = $state.raw<KeptBench | null>(null);
  /** Whether "save" writes to a file that is open already. */
  fileOpen = $state<string | null>(null);

  #bench: Bench;
  #parts: KeeperParts;
  #autosave: Autosave;
  #tabs: OtherTabs | null = null;
  #keeping: Keeping = demoKeeping();
  /** Whose state a value of the bench is. */
  #owners = new WeakMap<BenchFile, Keeping>();
  #known = new Keepings();
  #started = false;
  #demoWork = workIn(demoBench());

  constructor(bench: Bench, parts: KeeperParts) {
    this.#bench = bench;
    this.#parts = parts;
    this.#autosave = new Autosave(parts.store, parts.breath, this.#told);
  }

  /** Keeps in step with the bench and with the other tabs. Call while a component starts. */
  connect(): void {
    // The store is asked before the page is alive: what it answers comes after that in any case.
    if (typeof document !== 'undefined') void this.start().finally(() => tick().then(showBench));
    $effect(() => {
      void this.#bench.file;
      untrack(() => this.#see());
    });
    $effect(() => {
      this.#tabs = new OtherTabs(this.#hear);
      const end = watchPage({
        hidden: () => void this.#autosave.flush(),
        shown: () => void this.#look(this.#keeping),
        left: () => {
          this.#see();
          this.#autosave.breathe();
          void this.#autosave.flush();
        }
      });
      return () => {
        end();
        void this.#autosave.flush();
        this.#tabs?.close();
      };
    });
  }

  /** Brings back the bench that was on last. */
  async start(): Promise<void> {
    const { store, breath, memory } = this.#parts;
    try {
      const renamed = await carryOver(store, breath);
      const id = memory.bench ?? (await store.last());
      const kept = id === null ? null : await store.read(id);
      if (kept) this.#openKept(kept, !this.#bench.canUndo);
      if (renamed.length > 0)
        this.said = `Another tab had the last word on a bench; what was changed here is kept as “${renamed.join('”, “')}”.`;
      await this.refresh();
    } catch (error) {
      this.state = 'refused';
      this.problem = storeSentence(error);
    }
    this.#started = true;
    this.#see();
  }

  /** Reads the list of benches anew. */
  async refresh(): Promise<void> {
    this.list = (await this.#parts.store.list()).map(listed);
  }

  /** Opens a bench of the list in the place of this one, which stays one step back. */
  async open(id: string): Promise<void> {
    if (id === this.#keeping.id) return;
    await this.#asked(async () => {
      await this.#autosave.flush();
      const kept = await this.#parts.store.read(id);
      if (kept) this.#openKept(kept, false);
      else this.fileProblem = 'This bench is no longer in the browser’s store.';
      await this.refresh();
    });
  }

  openDemo(): void {
    this.#place(demoKeeping(), demoBench(), false);
  }

  /** Lets the user pick a bench file and opens it. Must be called from a click or a key. */
  async pick(): Promise<void> {
    try {
      const picked = await pickBench();
      if (picked) await this.openFile(picked);
    } catch (error) {
      this.fileProblem = `The file could not be opened: ${sentence(error)}. The bench is as it was.`;
    }
  }

  /** Opens a bench file from disk; what was on the bench stays one step back. */
  async openFile({ file, handle }: Picked): Promise<void> {
    await this.#asked(async () => {
      try {
        const text = await textOfBench(file);
        const value = readBenchFile(text);
        const name = nameOfFile(file.name);
        // The same file opened twice is not two benches.
        const same = this.#started ? await this.#same(name, text) : null;
        const keeping = same ? this.#known.of(same) : newKeeping(freeName(name, this.#names()));
        this.#place(keeping, value, false);
        if (this.fileProblem) return;
        keeping.handle = handle;
        this.#show();
        this.said = `${file.name} is on the bench.`;
      } catch (error) {
        if (!(error instanceof BenchFileError)) throw error;
        this.fileProblem = `${file.name} could not be opened: ${sentence(error)}. The bench is as it was.`;
      }
    });
  }

  /** Saves the bench to its file; to one that is asked for where it has none yet or `elsewhere` is wanted. */
  async save(elsewhere = false): Promise<void> {
    const keeping = this.#keeping;
    const text = () => writeBenchFile(this.#bench.file);
    await this.#toFile(text, keeping.name, elsewhere ? null : keeping.handle, keeping);
  }

  /** Saves the text of any kept bench to a file as it is, even where it cannot be read. */
  async saveKept(id: string): Promise<void> {
    const kept = await this.#asked(() => this.#parts.store.read(id));
    if (kept) await this.#toFile(() => kept.text, kept.name, null);
  }

  /** Goes on under another name; what was kept under the old one stays as it is. */
  async saveUnder(name: string): Promise<string | null> {
    const wanted = this.#free(name);
    if ('refused' in wanted) return wanted.refused;
    const keeping = this.#keeping;
    this.#autosave.drop(keeping);
    this.#known.forget(keeping.id);
    disown(keeping);
    Object.assign(keeping, newKeeping(wanted.name));
    await this.#keepNow();
    this.said = `Kept as “${wanted.name}”.`;
    return null;
  }

  async rename(name: string): Promise<string | null> {
    const wanted = this.#free(name, this.#keeping.id);
    if ('refused' in wanted) return wanted.refused;
    Object.assign(this.#keeping, { name: wanted.name, demo: false });
    await this.#keepNow();
    return null;
  }

  /** Deletes a bench from the browser's store. The one on the bench makes room for the demo bench. */
  async remove(id: string): Promise<void> {
    await this.#asked(async () => {
      await this.#autosave.flush();
      const kept = await this.#parts.store.read(id);
      const keeping = this.#known.get(id);
      if (keeping) this.#autosave.drop(keeping);
      if (id === this.#keeping.id) this.openDemo();
      // At once, so that an undo while the store is busy keeps it anew.
      if (keeping) disown(keeping);
      await this.#autosave
        .inTurn(() => this.#parts.store.remove(id))
        .catch((error: unknown) => {
          if (keeping && kept) adopt(keeping, kept);
          throw error;
        });
      this.#tabs?.tell({ id, stamp: null });
      this.deleted = kept;
      await this.refresh();
    });
  }

  /** Puts the bench that was deleted last back into the store. */
  async bringBack(): Promise<void> {
    const kept = this.deleted;
    if (!kept) return;
    await this.#asked(async () => {
      // Undo may have brought it back before.
      await this.#parts.store.write(kept);
      const [keeping, back] = [this.#known.get(kept.id), await this.#parts.store.read(kept.id)];
      if (keeping && back) adopt(keeping, back);
      this.deleted = null;
      await this.refresh();
    });
  }

  /** Puts what the other tab has written on the bench; what was there stays one step back. */
  async takeTheirs(): Promise<void> {
    const keeping = this.#keeping;
    await this.#asked(async () => {
      const theirs = (await this.#parts.store.read(keeping.id)) ?? keeping.overtaken;
      if (!theirs || keeping !== this.#keeping) return;
      this.#autosave.drop(keeping);
      this.#openKept(theirs, false);
    });
  }

  /** Goes on with what is on the bench under another name; the other tab's version keeps the old one. */
  async keepMine(): Promise<void> {
    await this.saveUnder(freeName(this.#keeping.name, [...this.#names(), this.#keeping.name]));
  }

  /** Makes sure that the work is kept before the page goes; rejects where it is not. */
  async makeSure(): Promise<void> {
    this.#see();
    await this.#autosave.flush();
    if (this.state === 'refused') throw new Error(this.problem ?? 'the bench is not kept');
  }

  /** Looks at what is on the bench and notes it to be kept. */
  #see(): void {
    const { file } = this.#bench;
    const owner = this.#owners.get(file);
    if (owner && owner !== this.#keeping) this.#turnTo(owner);
    else this.#owners.set(file, this.#keeping);
    if (!this.#started) return;
    const keeping = this.#keeping;
    if (keeping.demo) {
      if (workIn(file) === this.#demoWork) return this.#show();
      Object.assign(keeping, { demo: false, name: freeName(UNNAMED, this.#names()) });
      this.#turnTo(keeping);
    }
    this.#autosave.note(keeping, file);
    this.#show();
    if (this.state === 'kept') this.state = 'waiting';
  }

  /** Puts a bench in the place of this one. */
  #place(keeping: Keeping, file: BenchFile, atStart: boolean): void {
    this.fileProblem = null;
    const before = this.#bench.file;
    if (!this.#owners.has(before)) this.#owners.set(before, this.#keeping);
    const refused = atStart ? this.#bench.restore(file) : this.#bench.open(file);
    if (refused) {
      this.fileProblem = `“${keeping.name}” could not be opened: ${refused}. The bench is as it was.`;
      return;
    }
    this.#owners.set(file, keeping);
    this.#turnTo(keeping);
  }

  #openKept(kept: KeptBench, atStart: boolean): void {
    try {
      const file = readBenchFile(kept.text);
      const keeping = this.#known.of(kept);
      this.#place(keeping, file, atStart);
      if (!this.fileProblem) adopt(keeping, kept);
      this.#show();
    } catch (error) {
      if (!(error instanceof BenchFileError)) throw error;
      this.fileProblem = `“${kept.name}” could not be opened: ${sentence(error)}. It lies in this browser as it was; in the list of benches it can be saved to a file.`;
    }
  }

  #turnTo(keeping: Keeping): void {
    this.#keeping = keeping;
    if (!keeping.demo) {
      this.#known.add(keeping);
      this.#parts.memory.bench = keeping.id;
      // What refuses this refuses the bench itself, too, and that is told.
      this.#parts.store.setLast(keeping.id).catch(() => undefined);
    }
    this.#show();
  }

  #show(): void {
    const { name, demo, overtaken, id, handle, text } = this.#keeping;
    this.name = name;
    this.current = demo ? null : id;
    this.fileOpen = handle?.name ?? null;
    if (overtaken) this.state = 'overtaken';
    else if (demo) this.state = 'demo';
    else if (this.state !== 'refused') this.state = text === null ? 'new' : 'kept';
  }

  async #keepNow(): Promise<void> {
    this.#turnTo(this.#keeping);
    this.#autosave.note(this.#keeping, this.#bench.file);
    await this.#autosave.flush();
  }

  #told = (keeping: Keeping, outcome: Outcome): void => {
    if (outcome.kind === 'kept') {
      this.problem = null;
      noteReturning();
      const entry: Listed = { id: keeping.id, name: keeping.name, keptAt: Date.now(), problem: null };
      this.list = [entry, ...this.list.filter(({ id }) => id !== keeping.id)];
      this.#tabs?.tell({ id: keeping.id, stamp: keeping.stamp });
    }
    if (keeping !== this.#keeping) return;
    this.#show();
    if (outcome.kind === 'kept') this.state = 'kept';
    if (outcome.kind === 'refused') {
      this.state = 'refused';
      this.problem = outcome.sentence;
    }
  };

  #hear = ({ id, stamp }: Told): void => {
    const keeping = this.#known.get(id);
    if (stamp === null && keeping) {
      disown(keeping);
      this.#show();
      if (keeping === this.#keeping)
        this.said = 'Another tab has deleted this bench; the next change here keeps it again.';
    } else if (keeping && keeping === this.#keeping) void this.#look(keeping);
    this.refresh().catch(() => undefined);
  };

  /** Looks whether another tab has written the bench since. */
  async #look(keeping: Keeping): Promise<void> {
    if (!this.#started || keeping.stamp === null || keeping.overtaken) return;
    try {
      await this.#autosave.inTurn(async () => {
        const kept = await this.#parts.store.read(keeping.id);
        if (!kept || keeping !== this.#keeping || knownStamps(keeping).includes(kept.stamp)) return;
        if (sameWork(kept.text, writeBenchFile(this.#bench.file))) adopt(keeping, kept);
        else keeping.overtaken = kept;
        this.#show();
      });
    } catch {
      // Nothing was to be kept; the next change asks the store again and tells.
    }
  }

  async #toFile(
    text: () => string,
    name: string,
    handle: FileHandle | null,
    keeping?: Keeping
  ): Promise<void> {
    this.fileProblem = this.said = null;
    try {
      const saved = await saveText(text(), fileNameOf(name), handle);
      if (!saved) return;
      if (keeping && saved.handle) keeping.handle = saved.handle;
      this.#show();
      this.said = `Saved to ${saved.name}.`;
    } catch (error) {
      this.fileProblem = `“${name}” was not saved to a file: ${sentence(error)}. Try another place.`;
    }
  }

  /** Does what was asked for; tells where the store refuses. */
  async #asked<T>(deed: () => Promise<T>): Promise<T | null> {
    this.fileProblem = this.said = null;
    try {
      return await deed();
    } catch (error) {
      this.problem = storeSentence(error);
      return null;
    }
  }

  async #same(name: string, text: string): Promise<KeptBench | null> {
    try {
      const kept = await this.#parts.store.list();
      return kept.find((one) => one.name === name && sameWork(one.text, text)) ?? null;
    } catch {
      return null;
    }
  }

  #free(name: string, own?: string): { name: string } | { refused: string } {
    const cleaned = cleanName(name);
    if (cleaned === '') return { refused: 'a bench needs a name' };
    const taken = this.list.some((one) => one.name === cleaned && one.id !== own);
    return taken ? { refused: `another bench is called “${cleaned}” already` } : { name: cleaned };
  }

  #names(): string[] {
    return this.list.map(({ name }) => name);
  }
}
