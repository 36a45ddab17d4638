import { untrack } from 'svelte';
import { type BlindRun, LETTERS, type Saying } from '../../file/blind-run.js';
import type { Bench } from '../bench.svelte.js';
import type { Sounding } from '../sounding/sounding.svelte.js';
import {
  behindNow,
  isSameBench,
  runUnderWay,
  type RunWish,
  withAnswer,
  withRun,
  withRunEnded
} from './blind-run.js';
import { whyNotCompared } from './why-not-compared.js';

/** What blind trials are made with. */
export interface TrialParts {
  bench: Pick<Bench, 'file' | 'stands' | 'keepResults'>;
  sounding: Pick<Sounding, 'settled'> & {
    levels: Pick<Sounding['levels'], 'loudnessOf'>;
    hearing: Pick<Sounding['hearing'], 'listenBlind' | 'hearBlindly'>;
  };
  /** A whole number within 0 … 2³² − 1, another one each time. */
  chance: () => number;
}

/**
 * Blind trials on the bench. As long as a run is under way the page shows letters alone; what stands behind them is drawn from the run's
 * seed, so that a page that is loaded anew goes on with the very trial.
 */
export class Trials {
  /** Somebody plans a run, or looks at what came of one. */
  opened = $state(false);
  /** Which letter is heard, from 0. */
  letter = $state(0);
  /** Which letters have been heard in this trial. */
  heard = $state.raw<readonly boolean[]>([]);
  /** Which of the kept runs is looked at. */
  told = $state<number | null>(null);

  #parts: TrialParts;

  constructor(parts: TrialParts) {
    this.#parts = parts;
  }

  readonly run: BlindRun | null = $derived.by(() => runUnderWay(this.#parts.bench.file));
  /** The letters of the present trial. */
  readonly letters: readonly string[] = $derived(
    this.run ? LETTERS.slice(0, behindNow(this.run).length) : []
  );
  readonly shown: boolean = $derived(this.opened || this.run !== null);
  readonly kept: readonly BlindRun[] = $derived.by(() => this.#parts.bench.file.trials ?? []);
  /** Whether what is compared is ready to be heard. */
  readonly ready: boolean = $derived.by(() => this.#parts.sounding.settled);

  /** Keeps what is heard in step with the run. Call while a component starts. */
  connect(): void {
    const { bench, sounding } = this.#parts;
    const changed = $derived(this.run !== null && !isSameBench(bench.file, this.run));
    const places = $derived(this.run?.places ?? null);
    $effect(() => {
      if (changed) untrack(() => this.#end('changed'));
    });
    $effect(() => sounding.hearing.listenBlind(places));
    // Every trial begins with the first letter.
    const trial = $derived(this.run && !changed ? this.run.answers.length : null);
    $effect(() => {
      if (trial === null) return;
      untrack(() => {
        this.heard = [];
        this.hear(0);
      });
    });
  }

  open(): void {
    this.told = null;
    this.opened = true;
  }

  /** Back to the bench, where no run is under way. */
  leave(): void {
    if (!this.run) this.opened = false;
  }

  /** One sentence why these cannot be compared; null where they can. */
  obstacle(places: readonly number[]): string | null {
    const { bench, sounding } = this.#parts;
    return whyNotCompared(
      places.map((place) => bench.stands[place]),
      places.map((place) => sounding.levels.loudnessOf(place))
    );
  }

  begin(wish: RunWish): void {
    const { bench, chance } = this.#parts;
    this.opened = true;
    bench.keepResults((file) => withRun(file, wish, chance()), { begins: true });
  }

  /** Hears a letter of the present trial. */
  hear(letter: number): void {
    if (!this.run || letter < 0 || letter >= this.letters.length) return;
    this.letter = letter;
    this.heard = this.letters.map((_, i) => i === letter || (this.heard[i] ?? false));
    this.#parts.sounding.hearing.hearBlindly(this.run.places[behindNow(this.run)[letter]]);
  }

  /** Whether every letter of the trial has been heard. */
  get heardAll(): boolean {
    return this.heard.length > 0 && this.heard.every((one) => one);
  }

  /** Answers the present trial, once all its letters have been heard; the last answer ends the run. */
  answer(said: Saying): void {
    if (!this.run || !this.heardAll || !this.ready) return;
    this.#parts.bench.keepResults((file) => withAnswer(file, said));
    if (!this.run) this.#tellLast();
  }

  /** Ends the run before its time, which is recorded. */
  stop(): void {
    this.#end('early');
  }

  #end(ended: 'early' | 'changed'): void {
    this.#parts.bench.keepResults((file) => withRunEnded(file, ended));
    this.#tellLast();
  }

  #tellLast(): void {
    this.told = this.kept.length - 1;
    this.opened = true;
  }
}
