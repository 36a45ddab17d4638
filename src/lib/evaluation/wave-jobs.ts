import type { Air } from '../acoustics/air.js';
import type { Installation } from '../acoustics/installation.js';
import type { Listener } from '../acoustics/listener.js';
import { LruCache } from '../numeric/lru-cache.js';
import type { WavePool } from '../workers/waves/wave-pool.js';
import type { AccuracyName } from '../waves/accuracy.js';
import type { HeardWaves } from '../waves/curve/heard-waves.js';
import { solutionKey } from '../waves/wave-solution.js';
import { sentence } from '../format/sentence.js';

/** So many answers are remembered, a few kilobytes each. */
const REMEMBERED = 400;
/** So many mounts are solved in full at the same time: those behind them may turn out not to be wanted any more. */
const AT_ONCE = 2;

/** A mount, and where one listens. */
export interface Question {
  installation: Installation;
  air: Air;
  listener: Listener;
}

/** A mount on the shelf that is to be solved. */
export interface Wish extends Question {
  /** Its place on the shelf. */
  place: number;
}

export interface Known {
  accuracy: AccuracyName;
  heard: HeardWaves;
}

interface Job {
  key: string;
  /** A draft, or another listener of a mount that the workers have solved already: it follows the hand. */
  quick: boolean;
  controller: AbortController;
  share: number;
}

/** Who is told what becomes of the jobs. */
export interface Told {
  /** There is another answer, or another refusal. */
  changed: () => void;
  /** What is under way has come further. */
  moved: () => void;
}

/**
 * The wave solutions of the bench: what is known already, and what is being solved. A draft comes first, quickly, so that it
 * follows a drag; one is under way for a place on the shelf, and the newest size waits for it. When the hand rests, the full
 * solution settles after; one that is not wanted any more is given up.
 */
export class WaveJobs {
  /** Share that is done of the full solution of the first of the wishes, or null where none is under way. */
  progress: number | null = null;
  stopped = false;

  #told: Told;
  #pool: WavePool;
  #known = new LruCache<Known>(REMEMBERED);
  #refusals = new LruCache<string>(REMEMBERED);
  #solved = new LruCache<true>(REMEMBERED);
  #jobs = new Map<string, Job>();
  #drafting = new Map<string, Promise<Known>>();
  #wishes: { key: string; wish: Wish }[] = [];
  #resting = true;

  constructor(pool: WavePool, told: Told) {
    this.#pool = pool;
    this.#told = told;
  }

  /** The best that is known of a mount, or null. */
  best(wish: Question): Known | null {
    const key = keyOf(wish);
    return this.#known.get(`full ${key}`) ?? this.#known.get(`draft ${key}`) ?? null;
  }

  /** One sentence where a mount could not be solved. */
  refusal(wish: Question): string | null {
    return this.#refusals.get(keyOf(wish)) ?? null;
  }

  /**
   * What is to be solved now, the most important first; each at its place on the shelf. While the hand does not rest,
   * drafts alone.
   */
  want(wishes: readonly Wish[], resting: boolean): void {
    this.#wishes = wishes.map((wish) => ({ key: keyOf(wish), wish }));
    this.#resting = resting;
    const wanted = new Set(this.#wishes.map(({ key }) => key));
    for (const job of this.#jobs.values())
      if (!job.quick && (!resting || !wanted.has(job.key))) job.controller.abort();
    this.#go();
  }

  /** Gives up the full solutions under way; a change or `resume` begins them again. */
  stop(): void {
    this.stopped = true;
    for (const job of this.#jobs.values()) if (!job.quick) job.controller.abort();
  }

  resume(): void {
    this.stopped = false;
    this.#refusals = new LruCache(REMEMBERED);
    this.#go();
    this.#told.changed();
  }

  /** A quick solution of any mount, for what the knobs can reach; it waits behind what is wanted. */
  async draft(question: Question): Promise<Known> {
    const key = `draft ${keyOf(question)}`;
    const known = this.#known.get(key);
    if (known) return known;
    const asked = this.#drafting.get(key) ?? this.#askDraft(key, question);
    this.#drafting.set(key, asked);
    return asked.finally(() => this.#drafting.delete(key));
  }

  async #askDraft(key: string, { installation, air, listener }: Question): Promise<Known> {
    const [heard] = await this.#pool.ask({
      kind: 'hear',
      installation,
      air,
      accuracy: 'draft',
      listeners: [listener]
    });
    const found: Known = { accuracy: 'draft', heard };
    this.#known.set(key, found);
    return found;
  }

  /** Starts what is wanted and not under way: all that is quick, then full solutions in the order of the wishes. */
  #go(): void {
    for (const { key, wish } of this.#wishes) {
      if (this.#settled(key)) continue;
      const accuracy = this.#isSolved(wish) ? 'full' : 'draft';
      if (!this.#known.get(`${accuracy} ${key}`))
        this.#start(`quick at ${wish.place}`, key, wish, { accuracy, quick: true });
    }
    if (this.#resting && !this.stopped)
      for (const { key, wish } of this.#wishes)
        if (!this.#settled(key) && !this.#isSolved(wish) && this.#long().length < AT_ONCE)
          this.#start(`full ${key}`, key, wish, { accuracy: 'full', quick: false });
    this.#tellProgress();
  }

  #settled(key: string): boolean {
    return this.#known.get(`full ${key}`) !== undefined || this.#refusals.get(key) !== undefined;
  }

  /** Whether the workers have solved it in full for another listener: then this one comes as quickly as a draft. */
  #isSolved({ installation, air }: Wish): boolean {
    return this.#solved.get(solutionKey(installation, air)) === true;
  }

  #long(): Job[] {
    return [...this.#jobs.values()].filter(({ quick }) => !quick);
  }

  #start(
    id: string,
    key: string,
    wish: Wish,
    { accuracy, quick }: { accuracy: AccuracyName; quick: boolean }
  ): void {
    if (this.#jobs.has(id)) return;
    const { installation, air, listener } = wish;
    const job: Job = { key, quick, controller: new AbortController(), share: 0 };
    this.#jobs.set(id, job);
    const { signal } = job.controller;
    const over = (): void => {
      this.#jobs.delete(id);
      this.#go();
    };
    this.#pool
      .ask(
        { kind: 'hear', installation, air, accuracy, listeners: [listener] },
        {
          signal,
          urgent: quick,
          onProgress: (share) => {
            job.share = share;
            this.#tellProgress();
          }
        }
      )
      .then(
        ([heard]) => {
          this.#known.set(`${accuracy} ${key}`, { accuracy, heard });
          if (accuracy === 'full') this.#solved.set(solutionKey(installation, air), true);
          this.#told.changed();
        },
        (error: unknown) => {
          if (signal.aborted) return;
          this.#refusals.set(key, sentence(error));
          this.#told.changed();
        }
      )
      .finally(over);
  }

  #tellProgress(): void {
    const first = this.#wishes[0];
    const job = first && this.#long().find(({ key }) => key === first.key);
    this.progress = job ? job.share : null;
    this.#told.moved();
  }
}

function keyOf({ installation, air, listener }: Question): string {
  return `${solutionKey(installation, air)} ${JSON.stringify(listener)}`;
}
