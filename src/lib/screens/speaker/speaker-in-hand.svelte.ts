import type { Bench } from '../../bench/bench.svelte.js';
import {
  heardSpeaker,
  mountsWith,
  speakersToChoose,
  withCopy,
  withoutSpeaker,
  withSpeaker
} from '../../bench/speakers.js';
import type { BenchFile, BenchSpeaker } from '../../file/bench-file.js';
import { BENCH_FILE_LIMITS } from '../../file/bench-file-limits.js';

/** The speaker that the screen shows: that of the heard mount, until another one is chosen. */
export class SpeakerInHand {
  #bench: Bench;
  #chosen = $state<string | null>(null);

  constructor(bench: Bench) {
    this.#bench = bench;
  }

  readonly choices: Record<string, BenchSpeaker> = $derived.by(() => speakersToChoose(this.#bench.file));
  readonly key: string = $derived.by(() =>
    this.#chosen !== null && this.#chosen in this.choices ? this.#chosen : this.#bench.heard.setup.speaker
  );
  readonly speaker: BenchSpeaker = $derived(this.choices[this.key]);
  /** The mounts that have it, by their places on the shelf. */
  readonly mounts: number[] = $derived.by(() => mountsWith(this.#bench.file, this.key));

  get bench(): Bench {
    return this.#bench;
  }

  /** Shows a speaker, or with null that of the heard mount. */
  show(key: string | null): void {
    this.#chosen = key;
  }

  /** Gives it other values; one sentence where such a speaker cannot be. */
  put(speaker: BenchSpeaker, what: string | null = null): string | null {
    const key = this.key;
    return this.#keep((file) => withSpeaker(file, key, speaker), what && `speaker ${key} ${what}`);
  }

  rename(name: string): string | null {
    const trimmed = name.trim().slice(0, BENCH_FILE_LIMITS.name);
    return trimmed === '' ? 'a speaker needs a name' : this.put({ ...this.speaker, name: trimmed }, 'name');
  }

  /** Copies a speaker and shows the copy. */
  copy(key: string): string | null {
    let copied = key;
    const refused = this.#keep((file) => {
      const made = withCopy(file, key);
      copied = made.key;
      return made.file;
    });
    if (refused === null) this.#chosen = copied;
    return refused;
  }

  remove(key: string): string | null {
    return this.#keep((file) => withoutSpeaker(file, key));
  }

  /** Puts it into the heard mount. */
  mount(): string | null {
    const speaker = heardSpeaker(this.speaker);
    return speaker
      ? this.#bench.setSpeaker(this.key, speaker, false)
      : `“${this.speaker.name}” has no motor values, so it cannot be heard`;
  }

  #keep(change: (file: BenchFile) => BenchFile, kind: string | null = null): string | null {
    const refused = this.#bench.revise(change, kind);
    return refused && this.#bench.sentence(refused);
  }
}
