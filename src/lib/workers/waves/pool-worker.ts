import { because } from '../link/because.js';
import type { Holdings, WaveAsked, WaveQuestion, WaveSaid } from './wave-protocol.js';

/** A question that was put to the pool, until it is answered. */
export interface OpenQuestion {
  id: number;
  question: WaveQuestion;
  /** The `solutionKey` of its mount. */
  key: string;
  urgent: boolean;
  /** How many workers died while they had it. */
  deaths: number;
  /** Who waits for it; null after an abort. */
  asker: {
    resolve: (result: unknown) => void;
    reject: (reason: unknown) => void;
    progress: (share: number) => void;
  } | null;
}

/** What a worker reports to its pool. */
export interface PoolEars {
  /** It has one question less. */
  freed: () => void;
  /** It is of no use any more; `what` it has done ends a sentence about it. */
  died: (what: string) => void;
}

/** One worker of a pool, the questions it has and what it holds. */
export class PoolWorker {
  /** At most one that is not urgent and one that is, which it does first. */
  readonly open = new Map<number, OpenQuestion>();
  readonly #worker: Worker;
  #holds: Holdings = { solved: [], meshed: [] };

  constructor(worker: Worker, { freed, died }: PoolEars) {
    this.#worker = worker;
    worker.onmessage = ({ data }: MessageEvent<WaveSaid>) => {
      if (this.#heard(data)) freed();
    };
    worker.onerror = (event) => {
      event.preventDefault?.();
      died(`has failed${because(event.message)}`);
    };
    worker.onmessageerror = () => died('sent garbage');
  }

  get idle(): boolean {
    return this.open.size === 0;
  }

  /** Whether it would begin an urgent question after its present step. */
  get interruptible(): boolean {
    return [...this.open.values()].every(({ urgent }) => !urgent);
  }

  /** How many mounts it has solved and not forgotten. */
  get load(): number {
    return this.#holds.solved.length;
  }

  /** Whether a question is about a mount that it knows well enough to answer quickly. */
  knows({ key, question }: OpenQuestion): boolean {
    return this.#holds[question.kind === 'hear' ? 'solved' : 'meshed'].includes(key);
  }

  give(open: OpenQuestion): void {
    this.open.set(open.id, open);
    const { id, question, urgent } = open;
    this.#send({ id, question, urgent });
  }

  /** Tells it that nobody waits for a question any more; it has that question until it says so. */
  drop({ id }: OpenQuestion): void {
    if (this.open.has(id)) this.#send({ drop: id });
  }

  end(): void {
    const worker = this.#worker;
    worker.onmessage = worker.onerror = worker.onmessageerror = null;
    worker.terminate();
  }

  #send(asked: WaveAsked): void {
    this.#worker.postMessage(asked);
  }

  /** Whether that was the end of a question. */
  #heard(said: WaveSaid): boolean {
    const open = this.open.get(said.id);
    if (!open) return false;
    if (said.said === 'progress') {
      open.asker?.progress(said.share);
      return false;
    }
    this.open.delete(said.id);
    this.#holds = said.holds;
    if (said.said === 'result') open.asker?.resolve(said.result);
    if (said.said === 'error') open.asker?.reject(new Error(said.message));
    return true;
  }
}
