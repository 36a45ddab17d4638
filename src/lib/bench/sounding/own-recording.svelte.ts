import { sentence } from '../../format/sentence.js';
import { MAX_STRETCH } from '../../sounds/recording/check-recording.js';
import type { Seconds } from '../../units.js';
import type { Bench } from '../bench.svelte.js';
import { openRecording, withStretch, type Recording } from './open-recording.js';

/** The user's own recording: its file, and the stretch of it that the bench names. */
export class OwnRecording {
  /** The one that was opened last, whether it is the bench's sound now or not. */
  opened = $state.raw<Recording | null>(null);
  /** Its file. */
  file = $state.raw<File | null>(null);
  opening = $state(false);
  /** One sentence where a file could not be opened. */
  problem = $state<string | null>(null);

  #bench: Pick<Bench, 'file' | 'sampleRate' | 'setSound'>;
  #open: typeof openRecording;

  constructor(bench: Pick<Bench, 'file' | 'sampleRate' | 'setSound'>, open = openRecording) {
    this.#bench = bench;
    this.#open = open;
  }

  /** The recording that is the bench's sound, with the stretch that the bench names; null where its file is not open. */
  readonly current: Recording | null = $derived.by(() => {
    const { sound } = this.#bench.file;
    if (sound.kind !== 'recording' || this.opened?.name !== sound.name) return null;
    const from = sound.from ?? 0;
    return withStretch(this.opened, from, sound.until ?? from + MAX_STRETCH);
  });

  /** Opens a file. What played before stays if it cannot be opened. */
  async open(file: File): Promise<void> {
    this.opening = true;
    this.problem = null;
    try {
      const { sound } = this.#bench.file;
      this.opened = await this.#open(file, this.#bench.sampleRate);
      this.file = file;
      // The bench may name this very file and a stretch of it, from an earlier evening.
      if (sound.kind !== 'recording' || sound.name !== file.name)
        this.#bench.setSound({ kind: 'recording', name: file.name });
    } catch (error) {
      this.problem = sentence(error);
    } finally {
      this.opening = false;
    }
  }

  chooseStretch(start: Seconds, end: Seconds): void {
    if (!this.current) return;
    const chosen = withStretch(this.current, start, end);
    this.#bench.setSound(
      { kind: 'recording', name: chosen.name, from: chosen.start, until: chosen.end },
      'stretch'
    );
  }
}
