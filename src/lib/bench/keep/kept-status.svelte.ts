import { DEMO_NAME } from './bench-name.js';
import { storeSentence } from './bench-store.js';
import type { Keeping } from './keeping.js';

/**
 * How safe the bench is: the demo as it comes, nowhere yet, in the store, there but for the last change, refused by the
 * store, or held back because another tab has written it.
 */
export type KeptState = 'demo' | 'new' | 'kept' | 'waiting' | 'refused' | 'overtaken';

/** What became of the file of the bench's recording; null where there is none, or none is known. */
export type KeptRecording = 'looking' | 'kept' | 'too large' | 'refused' | null;

/** What the page shows of how the bench is kept: its name, how safe it is, and what was done or refused. */
export class KeptStatus {
  name = $state(DEMO_NAME);
  state = $state<KeptState>('demo');
  /** One sentence about what the browser's store refused. */
  problem = $state<string | null>(null);
  /** One sentence about a bench or a file that could not be opened or saved. */
  fileProblem = $state<string | null>(null);
  /** What was done, for the eye and the screen reader. */
  said = $state<string | null>(null);
  recording = $state<KeptRecording>(null);
  /** Which of the list is on the bench. */
  current = $state<string | null>(null);
  /** Whether "save" writes to a file that is open already, and to which. */
  fileOpen = $state<string | null>(null);

  /** Shows what is known of the bench that is on. A refusal stays until something is kept. */
  show({ name, demo, overtaken, id, handle, text }: Keeping): void {
    this.name = name;
    this.current = demo ? null : id;
    this.fileOpen = handle?.name ?? null;
    if (overtaken) this.state = 'overtaken';
    else if (demo) this.state = 'demo';
    else if (this.state !== 'refused') this.state = text === null ? 'new' : 'kept';
  }

  /** A change is noted and will be kept soon. */
  waits(): void {
    if (this.state === 'kept') this.state = 'waiting';
  }

  refuse(sentence: string): void {
    this.state = 'refused';
    this.problem = sentence;
  }

  /** Begins something new: what was said of the last is of no use any more. */
  clear(): void {
    this.fileProblem = this.said = null;
  }

  /** Does what was asked of the store; tells where it refuses. */
  async asked<T>(deed: () => Promise<T>): Promise<T | null> {
    this.clear();
    try {
      return await deed();
    } catch (error) {
      this.problem = storeSentence(error);
      return null;
    }
  }
}
