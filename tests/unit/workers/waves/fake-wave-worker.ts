import type {
  Holdings,
  WaveAsked,
  WaveQuestion,
  WaveSaid
} from '../../../../src/lib/workers/waves/wave-protocol.js';
import { solutionKey } from '../../../../src/lib/waves/wave-solution.js';

type Sent = Extract<WaveAsked, { id: number }>;

/** Stands in for a worker: notes what it is told, and says what the test wants. It knows every mount that it answered for. */
export class FakeWaveWorker {
  told: WaveAsked[] = [];
  terminated = false;
  onmessage: ((event: { data: WaveSaid }) => void) | null = null;
  onerror: ((event: { message: string }) => void) | null = null;
  onmessageerror: (() => void) | null = null;
  #holds: Holdings = { solved: [], meshed: [] };

  postMessage(message: WaveAsked) {
    this.told.push(structuredClone(message));
  }
  terminate() {
    this.terminated = true;
  }

  /** What it was asked and told to drop, in words: the length of the mount in mm, `!` where urgent, and the kind unless it is `hear`. */
  get log(): string[] {
    return this.told.map((asked) => {
      if ('drop' in asked) return `drop ${lengthOf(this.#sent(asked.drop).question)}`;
      const kind = asked.question.kind === 'hear' ? '' : `${asked.question.kind} `;
      return `${kind}${lengthOf(asked.question)}${asked.urgent ? '!' : ''}`;
    });
  }

  /** Answers the question about the mount of that length, or the last one. */
  answer(length?: number, result: unknown = `of ${length}`) {
    const { id, question } = this.#about(length);
    const key = solutionKey(question.installation, question.air, { accuracy: question.accuracy });
    this.#holds = {
      solved: question.kind === 'hear' ? [...this.#holds.solved, key] : this.#holds.solved,
      meshed: [...this.#holds.meshed, key]
    };
    this.say({ id, said: 'result', result, holds: this.#holds });
  }
  refuse(message: string, length?: number) {
    this.say({ id: this.#about(length).id, said: 'error', message, holds: this.#holds });
  }
  progress(share: number, length?: number) {
    this.say({ id: this.#about(length).id, said: 'progress', share });
  }
  /** Acknowledges that it has dropped what it was told to drop last. */
  acknowledge() {
    const last = this.told.findLast((asked) => 'drop' in asked) as { drop: number };
    this.say({ id: last.drop, said: 'dropped', holds: this.#holds });
  }
  say(data: WaveSaid) {
    this.onmessage?.({ data });
  }

  #about(length?: number): Sent {
    const sent = this.told.filter((asked): asked is Sent => 'id' in asked);
    return sent.findLast(({ question }) => length === undefined || lengthOf(question) === length)!;
  }
  #sent(id: number): Sent {
    return this.told.find((asked): asked is Sent => 'id' in asked && asked.id === id)!;
  }
}

function lengthOf({ installation: { mount } }: WaveQuestion): number {
  return mount.kind === 'shell' ? Math.round(mount.length * 1000) : 0;
}
