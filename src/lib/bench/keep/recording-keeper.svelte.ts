import { untrack } from 'svelte';
import type { Bench } from '../bench.svelte.js';
import { MAX_KEPT_BYTES, type KeptRecordings } from './kept-recordings.js';
import type { KeptStatus } from './kept-status.svelte.js';

/** What is asked of the place where recordings are opened. */
interface RecordingOpener {
  /** The file that was opened last. */
  readonly file: File | null;
  readonly opening: boolean;
  open(file: File): Promise<void>;
}

/** Keeps the file of a bench's recording with the bench, and opens it again with it. */
export class RecordingKeeper {
  #bench: Pick<Bench, 'file'>;
  #status: Pick<KeptStatus, 'current' | 'recording'>;
  #store: KeptRecordings;
  #opener: RecordingOpener;
  /** What lies in the store, as far as this tab knows. */
  #kept: { id: string; file: File } | null = null;

  constructor(
    bench: Pick<Bench, 'file'>,
    status: Pick<KeptStatus, 'current' | 'recording'>,
    store: KeptRecordings,
    opener: RecordingOpener
  ) {
    this.#bench = bench;
    this.#status = status;
    this.#store = store;
    this.#opener = opener;
  }

  /** The name of the file that the bench asks for; null where its sound is no recording. */
  readonly #wanted: string | null = $derived.by(() => {
    const { sound } = this.#bench.file;
    return sound.kind === 'recording' ? sound.name : null;
  });

  /** Keeps in step with the bench. Call while a component starts. */
  connect(): void {
    $effect(() => {
      const [id, name, file] = [this.#status.current, this.#wanted, this.#opener.file];
      if (id === null || name === null) return;
      if (file?.name === name) untrack(() => void this.keep(id, file));
      else if (!untrack(() => this.#opener.opening)) untrack(() => void this.open(id, name));
    });
  }

  /** Keeps a file with a bench, if it is not too large. */
  async keep(id: string, file: File): Promise<void> {
    if (this.#kept?.id === id && this.#kept.file === file) return;
    if (file.size > MAX_KEPT_BYTES) {
      this.#status.recording = 'too large';
      // What was kept of another file would be opened in its place.
      await this.#store.remove(id).catch(() => undefined);
      return;
    }
    this.#kept = { id, file };
    try {
      await this.#store.keep(id, file);
      this.#status.recording = 'kept';
    } catch {
      this.#kept = null;
      this.#status.recording = 'refused';
    }
  }

  /** Opens what was kept with a bench, if it is the file that the bench names and still wanted. */
  async open(id: string, name: string): Promise<void> {
    this.#status.recording = 'looking';
    const file = await this.#store.read(id).catch(() => null);
    if (this.#status.current !== id || this.#wanted !== name || this.#opener.file?.name === name) return;
    if (file?.name === name) {
      this.#kept = { id, file };
      await this.#opener.open(file);
    }
    this.#status.recording = file?.name === name ? 'kept' : null;
  }
}
