import type { WavePool } from '../workers/waves/wave-pool.js';
import type { AccuracyName } from '../waves/mesh/accuracy.js';
import { WaveJobs, type Known, type Question, type Wish } from './wave-jobs.js';

/** What is known of the wave solution, as the page sees it come: whoever reads an answer is told when there is a better one. */
export class WaveAnswers {
  /** Share that is done of the heard mount's full solution, or null where none is under way. */
  progress = $state<number | null>(null);
  /** Full solutions were stopped: what there is stays, and is drafted where it changes. */
  stopped = $state(false);
  /** One sentence where a part of the program failed and was replaced. */
  problem = $state<string | null>(null);

  #changes = $state(0);
  #pool: WavePool;
  #jobs: WaveJobs;

  constructor(pool: WavePool) {
    this.#pool = pool;
    this.#jobs = new WaveJobs(pool, {
      changed: () => this.#changes++,
      moved: () => (this.progress = this.#jobs.progress)
    });
    pool.onDied = (message) => (this.problem = message);
  }

  /** The best that is known of a mount, or null. */
  best(question: Question): Known | null {
    void this.#changes;
    return this.#jobs.best(question);
  }

  /** One sentence where a mount could not be solved. */
  refusal(question: Question): string | null {
    void this.#changes;
    return this.#jobs.refusal(question);
  }

  /** What is to be solved now, the most important first; while the hand does not rest, drafts alone. */
  want(wishes: readonly Wish[], resting: boolean): void {
    this.#jobs.want(wishes, resting);
  }

  /** Gives up the full solutions under way, until `resume`. */
  stop(): void {
    this.stopped = true;
    this.#jobs.stop();
  }

  resume(): void {
    this.stopped = false;
    this.problem = null;
    this.#jobs.resume();
  }

  /** A quick solution of any mount, for what the knobs can reach. */
  draft(question: Question): Promise<Known> {
    return this.#jobs.draft(question);
  }

  /** A solution of any mount, to be compared with others. */
  tryOut(question: Question, accuracy: AccuracyName, signal: AbortSignal): Promise<Known> {
    return this.#jobs.tryOut(question, accuracy, signal);
  }

  /** Lets the workers get ready, before anything is wanted of them. */
  warmUp(): void {
    this.#pool.warmUp();
  }
}
