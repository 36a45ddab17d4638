import { because } from '../link/because.js';
import { begunWorker } from './begun-worker.js';
import type { Answered, Answers, Question } from './protocol.js';

export interface AskOptions {
  /** Aborting rejects with the signal's reason; a question not yet sent is then never sent. */
  signal?: AbortSignal;
  /** Buffers to hand over instead of copying; they are empty for the caller afterwards. */
  transfer?: Transferable[];
}

interface Open {
  id: number;
  question: Question;
  transfer: Transferable[];
  /** Takes what came of the question; neither is called after an abort. */
  settle: { resolve: (result: unknown) => void; reject: (reason: unknown) => void } | null;
}

type Kept = Extract<Question, { kind: 'keep' }>;

/**
 * The page's end of the worker. One question at a time is with the worker, the others wait here, so that those that
 * are aborted in time cost nothing. A worker that dies fails its open questions, and the next question starts
 * another one, which is first given the kept sounds again.
 */
export class LabClient {
  /** Told in one sentence when a worker died. */
  onDied?: (message: string) => void;

  readonly #makeWorker: () => Worker;
  readonly #kept = new Map<string, Kept>();
  #worker: Worker | null = null;
  #waiting: Open[] = [];
  #asked: Open | null = null;
  #lastId = 0;
  #closed = false;

  constructor(makeWorker: () => Worker = startWorker) {
    this.#makeWorker = makeWorker;
  }

  /**
   * Asks one question. The samples of a `keep` are copied unless their buffer stands in `transfer`, then they move
   * at once; they are remembered here, for a new worker.
   */
  ask<K extends keyof Answers>(
    question: Question & { kind: K },
    { signal, transfer = [] }: AskOptions = {}
  ): Promise<Answers[K]> {
    if (this.#closed) return Promise.reject(new Error('the worker has been closed'));
    if (signal?.aborted) return Promise.reject(signal.reason);
    return new Promise((resolve, reject) => {
      const open = this.#opened(question, transfer);
      const dropped = () => {
        open.settle = null;
        this.#waiting = this.#waiting.filter((other) => other !== open);
        reject(signal!.reason);
      };
      const done = () => signal?.removeEventListener('abort', dropped);
      open.settle = {
        resolve: (result) => (done(), resolve(result as Answers[K])),
        reject: (reason) => (done(), reject(reason))
      };
      signal?.addEventListener('abort', dropped, { once: true });
      this.#waiting.push(open);
      this.#next();
    });
  }

  /** Ends the worker for good; whatever is open is rejected. */
  close(): void {
    this.#closed = true;
    this.#end(new Error('the worker has been closed'));
    this.#kept.clear();
  }

  /** A question with a number. The samples of a `keep` become the client's own, who sends the worker a copy. */
  #opened(question: Question, transfer: Transferable[]): Open {
    const id = ++this.#lastId;
    if (question.kind !== 'keep') return { id, question, transfer, settle: null };
    const handedOver = transfer.includes(question.samples.buffer);
    const samples = handedOver ? structuredClone(question.samples, { transfer }) : question.samples.slice();
    return { id, question: { ...question, samples }, transfer: [], settle: null };
  }

  #next(): void {
    if (this.#asked || this.#waiting.length === 0) return;
    if (!this.#worker && !this.#begin()) return;
    const open = this.#waiting.shift()!;
    this.#asked = open;
    try {
      this.#worker!.postMessage({ id: open.id, question: open.question }, open.transfer);
    } catch (error) {
      this.#asked = null;
      open.settle?.reject(error);
      this.#next();
    }
  }

  /** Starts a worker and puts the kept sounds first in the line. */
  #begin(): boolean {
    try {
      const worker = this.#makeWorker();
      worker.onmessage = ({ data }: MessageEvent<Answered>) => this.#answered(data);
      worker.onerror = (event) => {
        event.preventDefault?.();
        this.#died(`The part of the program that computes sounds has failed${because(event.message)}.`);
      };
      worker.onmessageerror = () => this.#died('The part of the program that computes sounds sent garbage.');
      this.#worker = worker;
    } catch (error) {
      const why = because(error instanceof Error ? error.message : '');
      this.#died(`The part of the program that computes sounds cannot start${why}.`);
      return false;
    }
    const again = [...this.#kept.values()].map((question) => {
      return { id: ++this.#lastId, question, transfer: [], settle: null };
    });
    this.#waiting = [...again, ...this.#waiting];
    return true;
  }

  #answered(answer: Answered): void {
    const open = this.#asked;
    if (!open || answer.id !== open.id) return;
    this.#asked = null;
    if (answer.error !== undefined) open.settle?.reject(new Error(answer.error));
    else {
      this.#remember(open.question);
      open.settle?.resolve(answer.result);
    }
    this.#next();
  }

  #remember(question: Question): void {
    if (question.kind === 'keep') this.#kept.set(question.key, question);
    if (question.kind === 'forget') this.#kept.delete(question.key);
  }

  #died(message: string): void {
    this.#end(new Error(message));
    this.onDied?.(message);
  }

  #end(reason: Error): void {
    this.#worker?.terminate();
    this.#worker = null;
    const open = this.#asked ? [this.#asked, ...this.#waiting] : this.#waiting;
    this.#asked = null;
    this.#waiting = [];
    for (const { settle } of open) settle?.reject(reason);
  }
}

function startWorker(): Worker {
  return begunWorker() ?? new Worker(new URL('./lab.worker.ts', import.meta.url), { type: 'module' });
}
