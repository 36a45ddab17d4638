import type { BenchFile } from '../../file/bench-file.js';
import { BenchFileError } from '../../file/bench-file-error.js';
import { demoBench } from '../../file/demo-bench.js';
import { layoutBench } from '../../file/layout-bench.js';
import { readBenchFile } from '../../file/read-bench-file.js';
import { sentence } from '../../format/sentence.js';
import type { Bench } from '../bench.svelte.js';
import type { KeptBench } from './kept-bench.js';
import { LAYOUT_DEMO_NAME } from './bench-name.js';
import type { KeptStatus } from './kept-status.svelte.js';
import { adopt, demoKeeping, disown, keepingOf, newKeeping, type Keeping } from './keeping.js';
import { workIn } from './same-work.js';

/**
 * What is on the bench and whose it is. Every value that the bench goes through belongs to one keeping, so that undo
 * brings back the name with the work; a bench that is opened again has the keeping it had before.
 */
export class Ownership {
  /** Whether what was on last has been brought back: until then nothing that is on the bench is to be kept. */
  settled = false;

  #bench: Pick<Bench, 'work' | 'open' | 'restore'>;
  #status: KeptStatus;
  #turned: (keeping: Keeping) => void;
  #keeping: Keeping = demoKeeping();
  /** Whose state a value of the bench is. */
  #owners = new WeakMap<BenchFile, Keeping>();
  /** The benches that this tab has had on its bench, by id: one keeping each, however often it was opened. */
  #known = new Map<string, Keeping>();
  #demoWork = [demoBench(), layoutBench()].map(workIn);

  /** `turned` is called with every bench, the demo apart, that comes on or gets its name. */
  constructor(
    bench: Pick<Bench, 'work' | 'open' | 'restore'>,
    status: KeptStatus,
    turned: (keeping: Keeping) => void
  ) {
    this.#bench = bench;
    this.#status = status;
    this.#turned = turned;
  }

  get keeping(): Keeping {
    return this.#keeping;
  }

  get file(): BenchFile {
    return this.#bench.work;
  }

  /** What this tab knows of a bench that it has had on. */
  known(id: string): Keeping | undefined {
    return this.#known.get(id);
  }

  /** The keeping of what was read from the store. */
  of(kept: KeptBench): Keeping {
    return this.#known.get(kept.id) ?? keepingOf(kept);
  }

  /** Follows the bench, which undo and redo may have led to a state of another bench. */
  follow(): Keeping {
    const owner = this.#owners.get(this.file);
    if (owner && owner !== this.#keeping) this.#turnTo(owner);
    else this.#owners.set(this.file, this.#keeping);
    return this.#keeping;
  }

  /** Whether it is a demo bench and nothing was worked on yet. */
  get untouched(): boolean {
    return this.#keeping.demo && this.#demoWork.includes(workIn(this.file));
  }

  /** Gives the bench that is on a name; the demo bench is no demo any more then. */
  call(name: string): void {
    Object.assign(this.#keeping, { name, demo: false });
    this.#turnTo(this.#keeping);
  }

  /** Makes a bench of its own of what is on, with the whole way back; what was kept is known no more. */
  renew(name: string): void {
    const keeping = this.#keeping;
    this.#known.delete(keeping.id);
    disown(keeping);
    Object.assign(keeping, newKeeping(name));
    this.#turnTo(keeping);
  }

  /**
   * Puts a bench in the place of this one, which stays one step back unless this is where the page starts.
   * @returns whether it is there; where not, the status says why.
   */
  put(keeping: Keeping, file: BenchFile, atStart = false): boolean {
    this.#status.fileProblem = null;
    const before = this.file;
    if (!this.#owners.has(before)) this.#owners.set(before, this.#keeping);
    const refused = atStart ? this.#bench.restore(file) : this.#bench.open(file);
    if (refused) {
      this.#status.fileProblem = `“${keeping.name}” could not be opened: ${refused}. The bench is as it was.`;
      return false;
    }
    this.#owners.set(file, keeping);
    this.#turnTo(keeping);
    return true;
  }

  /** Puts what was read from the store on the bench; what cannot be read is left there, and the status says so. */
  putKept(kept: KeptBench, atStart = false): void {
    try {
      const file = readBenchFile(kept.text);
      const keeping = this.of(kept);
      if (this.put(keeping, file, atStart)) adopt(keeping, kept);
      this.#status.show(this.#keeping);
    } catch (error) {
      if (!(error instanceof BenchFileError)) throw error;
      this.#status.fileProblem = `“${kept.name}” could not be opened: ${sentence(error)}. It lies in this browser as it was; in the list of benches it can be saved to a file.`;
    }
  }

  putDemo(): void {
    this.put(demoKeeping(), demoBench());
  }

  putLayoutDemo(): void {
    this.put(demoKeeping(LAYOUT_DEMO_NAME), layoutBench());
  }

  #turnTo(keeping: Keeping): void {
    this.#keeping = keeping;
    if (!keeping.demo) {
      this.#known.set(keeping.id, keeping);
      this.#turned(keeping);
    }
    this.#status.show(keeping);
  }
}
