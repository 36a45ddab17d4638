import type { Air } from '../acoustics/air.js';
import type { Installation } from '../acoustics/installation.js';
import type { Listener } from '../acoustics/listener.js';
import { LruCache } from '../numeric/lru-cache.js';
import { NewestWins } from '../workers/link/newest-wins.js';
import type { AskWavesOptions, WavePool } from '../workers/waves/wave-pool.js';
import type { AccuracyName } from '../waves/mesh/accuracy.js';
import type { HeardWaves } from '../waves/curve/heard-waves.js';
import { solutionKey } from '../waves/wave-solution.js';
import { sentence } from '../format/sentence.js';

/** So many answers are remembered, a few kilobytes each: every size that fits into a model, and what the shelf asks besides. */
const REMEMBERED = 1500;
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
  /** Nobody hears it: it is solved in full, behind the others, and nothing of it comes sooner. */
  atLeisure?: boolean;
}

export interface Known {
  accuracy: AccuracyName;
  heard: HeardWaves;
}

/** A wish, and the key under which its answers are known. */
interface Wanted {
  key: string;
  wish: Wish;
}

/** A full solution under way. */
interface Job {
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
  /** By place on the shelf: what follows the hand there. */
  #quick: NewestWins[] = [];
  #wishes: Wanted[] = [];
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
    for (const [key, { controller }] of this.#jobs) if (!resting || !wanted.has(key)) controller.abort();
    this.#quick.forEach((line) => line.withdraw());
    this.#go();
  }

  /** Gives up the full solutions under way; a change or `resume` begins them again. */
  stop(): void {
    this.stopped = true;
    for (const { controller } of this.#jobs.values()) controller.abort();
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

  /** A solution of any mount, to be compared with others; it waits behind what is wanted, and what is known already is not solved again. */
  async tryOut(question: Question, accuracy: AccuracyName, signal: AbortSignal): Promise<Known> {
    const { installation, air, listener } = question;
    const key = `${accuracy} ${keyOf(question)}`;
    const known = this.#known.get(key);
    if (known) return known;
    const [heard] = await this.#pool.ask(
      { kind: 'hear', installation, air, accuracy, listeners: [listener] },
      { signal }
    );
    const found: Known = { accuracy, heard };
    this.#known.set(key, found);
    return found;
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
    for (const wanted of this.#wishes)
      if (this.#quickAccuracy(wanted)) this.#lineAt(wanted.wish.place).run(() => this.#answerQuickly(wanted));
    if (this.#resting && !this.stopped)
      for (const wanted of this.#wishes)
        if (!this.#settled(wanted.key) && !this.#isSolved(wanted.wish) && this.#jobs.size < AT_ONCE)
          void this.#solve(wanted);
    this.#tellProgress();
  }

  #lineAt(place: number): NewestWins {
    return (this.#quick[place] ??= new NewestWins({ replaces: 'waiting' }));
  }

  #settled(key: string): boolean {
    return this.#known.get(`full ${key}`) !== undefined || this.#refusals.get(key) !== undefined;
  }

  /**
   * What follows the hand: a draft, or another listener of a mount that the workers have solved already. Null where that is
   * known.
   */
  #quickAccuracy({ key, wish }: Wanted): AccuracyName | null {
    if (this.#settled(key)) return null;
    const accuracy = this.#isSolved(wish) ? 'full' : 'draft';
    if (accuracy === 'draft' && wish.atLeisure) return null;
    return this.#known.get(`${accuracy} ${key}`) ? null : accuracy;
  }

  /** Whether the workers have solved it in full for another listener: then this one comes as quickly as a draft. */
  #isSolved({ installation, air }: Wish): boolean {
    return this.#solved.get(solutionKey(installation, air)) === true;
  }

  async #answerQuickly(wanted: Wanted): Promise<void> {
    // What was asked while the last one was answered may be known by now.
    const accuracy = this.#quickAccuracy(wanted);
    if (!accuracy) return;
    await this.#ask(wanted, accuracy, { urgent: true });
    this.#go();
  }

  async #solve(wanted: Wanted): Promise<void> {
    const { key } = wanted;
    if (this.#jobs.has(key)) return;
    const job: Job = { controller: new AbortController(), share: 0 };
    this.#jobs.set(key, job);
    await this.#ask(wanted, 'full', {
      urgent: false,
      signal: job.controller.signal,
      onProgress: (share) => {
        job.share = share;
        this.#tellProgress();
      }
    });
    this.#jobs.delete(key);
    this.#go();
  }

  /** Asks the workers, and notes what they say; nothing of what was given up. */
  async #ask({ key, wish }: Wanted, accuracy: AccuracyName, options: AskWavesOptions): Promise<void> {
    const { installation, air, listener } = wish;
    try {
      const [heard] = await this.#pool.ask(
        { kind: 'hear', installation, air, accuracy, listeners: [listener] },
        options
      );
      this.#known.set(`${accuracy} ${key}`, { accuracy, heard });
      if (accuracy === 'full') this.#solved.set(solutionKey(installation, air), true);
    } catch (error) {
      if (options.signal?.aborted) return;
      this.#refusals.set(key, sentence(error));
    }
    this.#told.changed();
  }

  #tellProgress(): void {
    const first = this.#wishes[0];
    this.progress = (first && this.#jobs.get(first.key)?.share) ?? null;
    this.#told.moved();
  }
}

function keyOf({ installation, air, listener }: Question): string {
  return `${solutionKey(installation, air)} ${JSON.stringify(listener)}`;
}
