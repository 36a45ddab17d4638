import { readBenchFile } from '../../file/read-bench-file.js';
import { sentence } from '../../format/sentence.js';
import { cleanName, freeName } from './bench-name.js';
import type { BenchStore } from './bench-store.js';
import type { KeptBench } from './kept-bench.js';
import { sameWork } from './same-work.js';

/** One bench of the list; `problem` says why it cannot be opened. */
export interface Listed {
  id: string;
  name: string;
  keptAt: number;
  problem: string | null;
}

/** The list of the benches in the store, the latest first, and the names that are taken there. */
export class KeptList {
  entries = $state.raw<Listed[]>([]);

  #store: BenchStore;

  constructor(store: BenchStore) {
    this.#store = store;
  }

  /** Reads the list anew. */
  async refresh(): Promise<void> {
    this.entries = (await this.#store.list()).map(listed);
  }

  /** A bench has just been kept: it is the latest now. */
  noteKept({ id, name }: Pick<KeptBench, 'id' | 'name'>): void {
    const entry: Listed = { id, name, keptAt: Date.now(), problem: null };
    this.entries = [entry, ...this.entries.filter((one) => one.id !== id)];
  }

  /** The name, or one with a number, that no bench of the list and none of `others` has. */
  freeName(name: string, others: readonly string[] = []): string {
    return freeName(name, [...this.entries.map((one) => one.name), ...others]);
  }

  /** A name that was typed, as it is kept; refused where it is empty or another bench than `own` has it. */
  accept(name: string, own?: string): { name: string } | { refused: string } {
    const cleaned = cleanName(name);
    if (cleaned === '') return { refused: 'a bench needs a name' };
    const taken = this.entries.some((one) => one.name === cleaned && one.id !== own);
    return taken ? { refused: `another bench is called “${cleaned}” already` } : { name: cleaned };
  }

  /** The bench in the store that has this name and holds the same work; null where there is none or the store refuses. */
  async same(name: string, text: string): Promise<KeptBench | null> {
    try {
      const kept = await this.#store.list();
      return kept.find((one) => one.name === name && sameWork(one.text, text)) ?? null;
    } catch {
      return null;
    }
  }
}

function listed({ id, name, keptAt, text }: KeptBench): Listed {
  return { id, name, keptAt, problem: problemOf(text) };
}

function problemOf(text: string): string | null {
  try {
    readBenchFile(text);
    return null;
  } catch (error) {
    return sentence(error);
  }
}
