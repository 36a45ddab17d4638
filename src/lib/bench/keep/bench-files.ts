import { BenchFileError } from '../../file/bench-file-error.js';
import { readBenchFile } from '../../file/read-bench-file.js';
import { writeBenchFile } from '../../file/write-bench-file.js';
import { sentence } from '../../format/sentence.js';
import { textOfBench, type BenchDisk, type FileHandle, type Picked } from './bench-disk.js';
import { fileNameOf, nameOfFile } from './bench-name.js';
import type { BenchStore } from './bench-store.js';
import { newKeeping, type Keeping } from './keeping.js';
import type { KeptList } from './kept-list.svelte.js';
import type { KeptStatus } from './kept-status.svelte.js';
import type { Ownership } from './ownership.js';

/** What files are opened and saved with. */
export interface BenchFilesParts {
  disk: BenchDisk;
  store: BenchStore;
  ownership: Ownership;
  list: KeptList;
  status: KeptStatus;
}

/** Benches as files on disk: pick one, open it, save what is on the bench or what is kept. */
export class BenchFiles {
  #parts: BenchFilesParts;

  constructor(parts: BenchFilesParts) {
    this.#parts = parts;
  }

  /** Lets the user pick a bench file and opens it. Must be called from a click or a key. */
  async pick(): Promise<void> {
    const { disk, status } = this.#parts;
    try {
      const picked = await disk.pick();
      if (picked) await this.open(picked);
    } catch (error) {
      status.fileProblem = `The file could not be opened: ${sentence(error)}. The bench is as it was.`;
    }
  }

  /** Opens a bench file from disk; what was on the bench stays one step back. */
  async open({ file, handle }: Picked): Promise<void> {
    const { list, ownership, status } = this.#parts;
    await status.asked(async () => {
      try {
        const text = await textOfBench(file);
        const value = readBenchFile(text);
        const name = nameOfFile(file.name);
        // The same file opened twice is not two benches.
        const same = ownership.settled ? await list.same(name, text) : null;
        const keeping = same ? ownership.of(same) : newKeeping(list.freeName(name));
        if (!ownership.put(keeping, value)) return;
        keeping.handle = handle;
        status.show(keeping);
        status.said = `${file.name} is on the bench.`;
      } catch (error) {
        if (!(error instanceof BenchFileError)) throw error;
        status.fileProblem = `${file.name} could not be opened: ${sentence(error)}. The bench is as it was.`;
      }
    });
  }

  /** Saves the bench to its file; to one that is asked for where it has none yet or `elsewhere` is wanted. */
  async save(elsewhere = false): Promise<void> {
    const { ownership } = this.#parts;
    const { keeping } = ownership;
    const text = () => writeBenchFile(ownership.file);
    await this.#write(text, keeping.name, elsewhere ? null : keeping.handle, keeping);
  }

  /** Saves the text of any kept bench to a file as it is, even where it cannot be read. */
  async saveKept(id: string): Promise<void> {
    const { status, store } = this.#parts;
    const kept = await status.asked(() => store.read(id));
    if (kept) await this.#write(() => kept.text, kept.name, null);
  }

  async #write(
    text: () => string,
    name: string,
    handle: FileHandle | null,
    keeping?: Keeping
  ): Promise<void> {
    const { disk, ownership, status } = this.#parts;
    status.clear();
    try {
      const saved = await disk.save(text(), fileNameOf(name), handle);
      if (!saved) return;
      if (keeping && saved.handle) keeping.handle = saved.handle;
      status.show(ownership.keeping);
      status.said = `Saved to ${saved.name}.`;
    } catch (error) {
      status.fileProblem = `“${name}” was not saved to a file: ${sentence(error)}. Try another place.`;
    }
  }
}
