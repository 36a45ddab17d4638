import { SPEAKERS } from '../../acoustics/speaker/speakers.js';
import { solutionKey } from '../../waves/wave-solution.js';
import { because } from '../link/because.js';
import { PoolWorker, type OpenQuestion } from './pool-worker.js';
import type { WaveAnswers, WaveQuestion } from './wave-protocol.js';

export interface AskWavesOptions {
  /** Aborting rejects with the signal's reason; a question not yet sent is then never sent. */
  signal?: AbortSignal;
  /** Told the share that is done, 0 … 1, never less than before. */
  onProgress?: (share: number) => void;
  /** For what follows the hand: goes before others, and a worker puts its long work aside for it. */
  urgent?: boolean;
}

const NAME = 'The part of the program that computes waves';
/** A small mount whose cone stands out of both middles, so that every way through the program is taken once. */
const WARM_UP: WaveQuestion = {
  kind: 'hear',
  installation: {
    speaker: SPEAKERS.oval,
    mount: { kind: 'plate', shape: 'rectangle', length: 0.1, width: 0.06, offset: [0.01, 0.005] },
    turn: 0
  },
  air: { temperatureC: 20 },
  accuracy: 'draft',
  listeners: [{ angleDeg: 0, plane: 'length' }]
};

/**
 * The page's end of the workers that solve waves. A question goes to an idle worker that knows its mount, else to any idle
 * one, else it waits here, where an abort costs nothing. An urgent question goes before others. It waits for no long work: a
 * worker that is busy with something not urgent takes it too, begins it after its present step and goes back to the other
 * afterwards. About a mount that a worker knows it goes to that worker, busy or not, since another would have to solve the
 * mount anew. A worker that dies is replaced, and its questions are asked once more.
 */
export class WavePool {
  /** Told in one sentence when a worker died. */
  onDied?: (message: string) => void;

  readonly #makeWorker: () => Worker;
  #size: number;
  #workers: PoolWorker[] = [];
  #waiting: OpenQuestion[] = [];
  #lastId = 0;
  #closed = false;

  /** @param size most workers at a time; each is started when it is needed first */
  constructor(makeWorker: () => Worker = startWorker, size = usualSize()) {
    this.#makeWorker = makeWorker;
    this.#size = size;
  }

  ask<K extends WaveQuestion['kind']>(
    question: WaveQuestion & { kind: K },
    { signal, onProgress, urgent = false }: AskWavesOptions = {}
  ): Promise<WaveAnswers[K]> {
    if (this.#closed) return Promise.reject(closed());
    if (signal?.aborted) return Promise.reject(signal.reason);
    return new Promise((resolve, reject) => {
      const open = this.#opened(question, urgent);
      const dropped = () => {
        open.asker = null;
        this.#waiting = this.#waiting.filter((other) => other !== open);
        for (const worker of this.#workers) worker.drop(open);
        reject(signal!.reason);
      };
      const done = () => signal?.removeEventListener('abort', dropped);
      let most = -Infinity;
      open.asker = {
        resolve: (result) => (done(), resolve(result as WaveAnswers[K])),
        reject: (reason) => (done(), reject(reason)),
        progress: (share) => {
          if (share > most) onProgress?.((most = share));
        }
      };
      signal?.addEventListener('abort', dropped, { once: true });
      this.#waiting.push(open);
      this.#next();
    });
  }

  /**
   * Starts the workers that are not yet there and lets each solve something small: the first solution of a new worker takes
   * several times as long as the next.
   */
  warmUp(): void {
    while (!this.#closed && this.#workers.length < this.#size) {
      try {
        this.#start().give(this.#opened(WARM_UP, false));
      } catch {
        // the first question will try again, and say so
        return;
      }
    }
  }

  /** Ends the workers for good; whatever is open is rejected. */
  close(): void {
    this.#closed = true;
    const open = [...this.#workers.flatMap((worker) => [...worker.open.values()]), ...this.#waiting];
    for (const worker of this.#workers) worker.end();
    this.#workers = [];
    this.#waiting = [];
    for (const { asker } of open) asker?.reject(closed());
  }

  /** A question with a number, and a copy of it, which is not changed by whoever asked. */
  #opened(asked: WaveQuestion, urgent: boolean): OpenQuestion {
    const question = structuredClone(asked);
    const key = solutionKey(question.installation, question.air, { accuracy: question.accuracy });
    return { id: ++this.#lastId, question, key, urgent, deaths: 0, asker: null };
  }

  /** Gives out what can be given out. */
  #next(): void {
    const inOrder = [
      ...this.#waiting.filter(({ urgent }) => urgent),
      ...this.#waiting.filter(({ urgent }) => !urgent)
    ];
    try {
      for (const open of inOrder) {
        const worker = this.#workerFor(open);
        if (!worker) continue;
        this.#waiting = this.#waiting.filter((other) => other !== open);
        worker.give(open);
      }
    } catch (error) {
      this.#cannotStart(error);
    }
  }

  /**
   * The worker that is to take a question now, or null if it has to wait.
   * @throws whatever keeps a worker from starting
   */
  #workerFor(open: OpenQuestion): PoolWorker | null {
    const knowing = this.#workers.filter((worker) => worker.knows(open));
    const idle = this.#workers.filter((worker) => worker.idle);
    const free = (workers: PoolWorker[]) => workers.find((worker) => worker.interruptible) ?? null;
    const knowingIdle = knowing.find((worker) => worker.idle);
    if (knowingIdle) return knowingIdle;
    if (open.urgent && knowing.length > 0) return free(knowing);
    if (idle.length > 0) return idle.reduce((a, b) => (b.load < a.load ? b : a));
    if (this.#workers.length < Math.max(1, this.#size)) return this.#start();
    return open.urgent ? free(this.#workers) : null;
  }

  #start(): PoolWorker {
    const worker: PoolWorker = new PoolWorker(this.#makeWorker(), {
      freed: () => this.#next(),
      died: (what) => this.#died(worker, what)
    });
    this.#workers.push(worker);
    return worker;
  }

  /** The workers there are have to do; without any, what waits is rejected. */
  #cannotStart(error: unknown): void {
    if (this.#workers.length > 0) {
      this.#size = this.#workers.length;
      return this.#next();
    }
    const message = `${NAME} cannot start${because(error instanceof Error ? error.message : '')}.`;
    const waiting = this.#waiting;
    this.#waiting = [];
    for (const { asker } of waiting) asker?.reject(new Error(message));
    this.onDied?.(message);
  }

  #died(worker: PoolWorker, what: string): void {
    worker.end();
    this.#workers = this.#workers.filter((other) => other !== worker);
    const open = [...worker.open.values()].filter(({ asker }) => asker);
    for (const one of open) one.deaths++;
    this.#waiting = [...open.filter(({ deaths }) => deaths < 2), ...this.#waiting];
    for (const { asker, deaths } of open)
      if (deaths >= 2) asker!.reject(new Error(`${NAME} ${what}, twice on the same question.`));
    this.onDied?.(`${NAME} ${what}; it was started anew.`);
    this.#next();
  }
}

function closed(): Error {
  return new Error('the workers have been closed');
}

/** One worker a core, less one that is left to the page and to the sound; four at most. */
function usualSize(): number {
  return Math.min(4, Math.max(1, (globalThis.navigator?.hardwareConcurrency ?? 1) - 1));
}

function startWorker(): Worker {
  return new Worker(new URL('./waves.worker.ts', import.meta.url), { type: 'module' });
}
