import { untrack } from 'svelte';
import { refusal } from '../../acoustics/refusal.js';
import { checkInstallation } from '../../acoustics/mounts/check-installation.js';
import { isAwaited, modelAt, whereItListens } from '../../evaluation/models.js';
import type { Wish } from '../../evaluation/wave-jobs.js';
import type { BenchFile, BenchSound } from '../../file/bench-file.js';
import { installationOf } from '../../file/installation-of.js';
import type { Scene } from '../../file/scene.js';
import type { Hertz, Seconds } from '../../units.js';
import type { Bench } from '../bench.svelte.js';
import { type Missing, missingOf, sceneBench } from './scene-bench.js';
import { SameValues } from './same-values.js';
import { ScriptClock } from './script-clock.svelte.js';
import { withSceneChanged, withScenes } from './scenes.js';

/** What the hall's script works on. */
export interface ScriptParts {
  bench: Pick<Bench, 'file' | 'work' | 'performing' | 'perform' | 'rest' | 'revise'>;
  /** The projector view. */
  hall: { open: boolean; air: boolean; enter: () => Promise<void>; leave: () => Promise<void> };
  air: { readonly mode: 'tone' | 'puff'; frequency: Hertz; makePuff: () => void; showTone: () => void };
  growth: { before: unknown; stop: () => void };
  sounding: {
    readonly ownRecording: { readonly opened: { readonly name: string } | null };
    silence: (on: boolean) => void;
    expect: (sound: BenchSound) => void;
  };
}

/** What of the page a run changes besides the bench, to be put back after it. */
interface Before {
  air: boolean;
  frequency: Hertz;
  grown: unknown;
}

/**
 * The script of the bench that is kept, and its run in the hall. A scene is shown in the place of the work: whatever is done in it, the
 * scene comes back as it was kept, and after the run the bench stands as it was left.
 */
export class Script {
  readonly clock = new ScriptClock();
  /** The scene that is shown, or with which a run goes on; counted from 0. */
  at = $state(0);
  /** The next scene's name stands in the hall, for a presenter who has no window of his own. */
  namesNext = $state(false);

  #black = $state(false);
  /** A run has begun since the page was opened, and can be gone on with. */
  #begun = false;
  #before: Before | null = null;
  #parts: ScriptParts;
  /** What was shown: an equal value is none that has changed. */
  readonly #known = new SameValues();

  constructor(parts: ScriptParts) {
    this.#parts = parts;
  }

  readonly scenes: readonly Scene[] = $derived.by(() => this.#parts.bench.work.script ?? []);
  readonly running: boolean = $derived.by(() => this.#parts.bench.performing);
  readonly scene: Scene | null = $derived.by(() => this.scenes[this.at] ?? null);
  readonly next: Scene | null = $derived.by(() => this.scenes[this.at + 1] ?? null);
  /** The words that the hall reads, where the scene is one of words. */
  readonly text: string | null = $derived.by(() =>
    this.running && this.scene?.shows === 'text' ? (this.scene.text ?? '') : null
  );

  /** The hall sees nothing. */
  get black(): boolean {
    return this.#black && this.running;
  }

  /** How long the whole script is to take. */
  get planned(): Seconds {
    return plannedTo(this.scenes.length, this.scenes);
  }

  /** When the present scene is to be over, since the beginning. */
  get due(): Seconds {
    return plannedTo(this.at + 1, this.scenes);
  }

  /** What of a scene there is no more. */
  missing(scene: Scene): Missing[] {
    return missingOf(scene, this.#parts.bench.work, { isOpen: this.#isOpen });
  }

  /** The mount of the next scene, which is solved while nobody waits for it. */
  readonly coming: readonly Wish[] = $derived.by(() => {
    if (!this.running || !this.next?.heard) return [];
    const file = this.#benchAt(this.at + 1);
    const { setups, view, air } = file;
    const model = modelAt(
      view.model,
      file.listener,
      setups.map(({ mount }) => mount)
    );
    const installation = installationOf(file, setups[view.heard], 'ideal');
    if (!isAwaited(model) || refusal(() => checkInstallation(installation))) return [];
    const listener = whereItListens(model, file.listener);
    return [{ place: view.heard, installation, air, listener, atLeisure: true }];
  });

  /** Keeps it in step. Call while a component starts. */
  connect(): void {
    $effect(() => {
      if (!this.running) return;
      const stop = this.clock.go();
      // However the run ends: another bench may have been opened.
      return () => {
        stop();
        untrack(() => this.#end());
      };
    });
  }

  /** Keeps what is heard and seen now as the last scene; one sentence where it cannot be. */
  keep(): string | null {
    const { bench } = this.#parts;
    const scene = this.#seenNow();
    return bench.revise((file) => withScenes(file, [scene], file.script?.length ?? 0));
  }

  /** Keeps what is heard and seen now in the place of the scene that is shown, with its name, its time and its words. */
  keepHere(): void {
    if (!this.running || !this.scene?.heard) return;
    const { bench } = this.#parts;
    const { heard, shows, frequency } = this.#seenNow();
    bench.rest();
    bench.revise((file) => withSceneChanged(file, this.at, { heard, shows, frequency }));
    this.#show();
  }

  /** Shows a scene to the hall: the one that was shown last, unless told. From the first one on the time begins anew. */
  begin(at = this.at): void {
    if (this.scenes.length === 0) return;
    const { hall, air, growth } = this.#parts;
    this.#before ??= { air: hall.air, frequency: air.frequency, grown: growth.before };
    this.at = Math.min(at, this.scenes.length - 1);
    if (!this.#begun || this.at === 0) this.clock.begin();
    this.#begun = true;
    this.#turn();
    void hall.enter();
  }

  /** The next scene or the one before; at the ends it stays. */
  step(by: 1 | -1): void {
    const to = this.at + by;
    if (!this.running || to < 0 || to >= this.scenes.length) {
      this.#black = false;
      return;
    }
    this.at = to;
    this.#turn();
  }

  /** The scene as it was kept, heard and seen, whatever has been done in it. */
  back(): void {
    if (!this.running) return;
    this.#parts.sounding.silence(false);
    this.#show();
  }

  /** Nothing to be seen, and back. What is heard goes on. */
  toggleBlack(): void {
    if (this.running) this.#black = !this.#black;
  }

  /** Back to the bench as it was left. */
  leave(): void {
    if (!this.running) return;
    this.#end();
    this.#parts.bench.rest();
    void this.#parts.hall.leave();
  }

  #turn(): void {
    this.clock.turn();
    this.#show();
    if (this.next) this.#parts.sounding.expect(this.#benchAt(this.at + 1).sound);
  }

  #show(): void {
    const { bench, hall, air, growth } = this.#parts;
    const { shows, frequency } = this.scenes[this.at];
    this.#black = false;
    growth.stop();
    bench.perform(this.#benchAt(this.at));
    hall.air = shows === 'tone' || shows === 'puff';
    if (frequency !== undefined) air.frequency = frequency;
    if (shows === 'puff') air.makePuff();
    else air.showTone();
  }

  /** Puts back what of the page is not the bench. */
  #end(): void {
    const { hall, air, growth } = this.#parts;
    if (!this.#before) return;
    growth.stop();
    growth.before = this.#before.grown;
    hall.air = this.#before.air;
    air.frequency = this.#before.frequency;
    // A puff is worked out when somebody asks for it.
    air.showTone();
    this.#before = null;
    this.#black = false;
    this.#known.forget();
  }

  #benchAt(at: number): BenchFile {
    const { work } = this.#parts.bench;
    for (const own of [...work.setups, work.sound, work.listener]) this.#known.of(own);
    return sceneBench(work, at, { isOpen: this.#isOpen, same: this.#known.of });
  }

  #isOpen = (sound: BenchSound): boolean =>
    sound.kind !== 'recording' || this.#parts.sounding.ownRecording.opened?.name === sound.name;

  #seenNow(): Scene {
    const { bench, hall, air } = this.#parts;
    const { setups, view, sound, listener } = bench.file;
    const setup = setups[view.heard];
    const shows = hall.open && hall.air ? air.mode : 'curves';
    return {
      name: setup.name,
      minutes: 1,
      shows,
      heard: { setup, sound, listener, model: view.model, sameLoudness: view.sameLoudness },
      ...(shows === 'tone' && { frequency: air.frequency }),
      notes: ''
    };
  }
}

/** How long the first scenes are to take. */
function plannedTo(count: number, scenes: readonly Scene[]): Seconds {
  return scenes.slice(0, count).reduce((sum, { minutes }) => sum + 60 * minutes, 0);
}
