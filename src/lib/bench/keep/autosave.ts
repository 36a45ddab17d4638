import type { BenchFile } from '../../file/bench-file.js';
import { writeBenchFile } from '../../file/write-bench-file.js';
import { sentence } from '../../format/sentence.js';
import { storeSentence, type BenchStore } from './bench-store.js';
import type { EmergencySave } from './emergency-save.js';
import { adopt, knownStamps, type Keeping } from './keeping.js';
import { newStamp } from './kept-bench.js';
import { sameWork } from './same-work.js';

/** A change is in the store after this many milliseconds; during a drag it is written this often. */
const SOON = 200;

/** How keeping a bench went. */
export type Outcome = { kind: 'kept' | 'overtaken' } | { kind: 'refused'; sentence: string };

/**
 * Brings benches into the store soon after they change, one after the other and never over what another tab has
 * written. What is not in the store yet stays noted, whatever happens.
 */
export class Autosave {
  #store: BenchStore;
  #emergency: EmergencySave;
  #tell: (keeping: Keeping, outcome: Outcome) => void;
  #noted = new Map<Keeping, BenchFile>();
  #timer: ReturnType<typeof setTimeout> | null = null;
  #turn: Promise<unknown> = Promise.resolve();

  constructor(
    store: BenchStore,
    emergency: EmergencySave,
    tell: (keeping: Keeping, outcome: Outcome) => void
  ) {
    this.#store = store;
    this.#emergency = emergency;
    this.#tell = tell;
  }

  /** The bench has changed: it will be kept soon. */
  note(keeping: Keeping, file: BenchFile): void {
    this.#noted.set(keeping, file);
    this.#timer ??= setTimeout(() => void this.flush(), SOON);
  }

  /** It need not be kept after all. */
  drop(keeping: Keeping): void {
    this.#noted.delete(keeping);
    this.#emergency.takeBack(keeping.id);
  }

  /** Does something with the store when nothing else is under way there. */
  inTurn<T>(deed: () => Promise<T>): Promise<T> {
    const done = this.#turn.then(deed);
    this.#turn = done.catch(() => undefined);
    return done;
  }

  /** Keeps at once what is noted. */
  flush(): Promise<void> {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    return this.inTurn(async () => {
      for (const keeping of [...this.#noted.keys()]) await this.#keep(keeping);
    });
  }

  /** Leaves what is not in the store yet where the next page finds it. At once, for a page that is going. */
  saveInEmergency(): void {
    for (const [keeping, file] of this.#noted) {
      const text = textOf(file);
      if (text !== null && (text !== keeping.text || keeping.name !== keeping.keptName))
        this.#emergency.leave({ id: keeping.id, name: keeping.name, text, known: knownStamps(keeping) });
    }
  }

  async #keep(keeping: Keeping): Promise<void> {
    const file = this.#noted.get(keeping);
    if (!file || keeping.overtaken) return;
    try {
      const text = writeBenchFile(file);
      const { id, name, stamp } = keeping;
      if (text !== keeping.text || name !== keeping.keptName || stamp === null) {
        const [known, next] = [knownStamps(keeping), newStamp()];
        keeping.trying = next;
        const theirs = await this.#store.write({ id, name, text }, known, next);
        // While that took its time, the bench may have been put elsewhere.
        if (id !== keeping.id) return;
        if (theirs) {
          if (!sameWork(theirs.text, text)) {
            keeping.overtaken = theirs;
            return this.#tell(keeping, { kind: 'overtaken' });
          }
          adopt(keeping, theirs);
          return this.note(keeping, this.#noted.get(keeping) ?? file);
        }
        Object.assign(keeping, { text, stamp: next, trying: null, keptName: name });
      }
      if (this.#noted.get(keeping) === file && keeping.name === name) this.drop(keeping);
      this.#tell(keeping, { kind: 'kept' });
    } catch (error) {
      this.#tell(keeping, { kind: 'refused', sentence: refusalOf(error) });
    }
  }
}

function textOf(file: BenchFile): string | null {
  try {
    return writeBenchFile(file);
  } catch {
    return null;
  }
}

function refusalOf(error: unknown): string {
  return error instanceof Error && error.name === 'BenchFileError'
    ? `This bench cannot be kept as it is: ${sentence(error)}. Undo the last change, or go on and mend it.`
    : storeSentence(error);
}
