import { untrack } from 'svelte';
import { isWithin, type Lift } from '../../acoustics/speaker/lift.js';
import { models } from '../../evaluation/models.js';
import type { Stand } from '../../evaluation/stand.js';
import type { WaveAnswers } from '../../evaluation/wave-answers.svelte.js';
import type { ModelName } from '../../file/bench-file.js';
import { FULL_NOTCH } from '../../sounds/driving.js';
import { isMoving } from '../../sounds/kinds.js';
import { NewestWins } from '../../workers/link/newest-wins.js';
import type { Bench } from '../bench.svelte.js';
import { type Headroom, type Reach, USUAL_GAIN } from './headroom.js';
import type { Playback } from './playback.svelte.js';
import { reachOfBench } from './reach-of-bench.js';
import type { Loop, SoundCache } from './sound-cache.js';

/** Until the first play the bench must have been left alone so long: whoever only turns its knobs needs no horn. */
const LEFT_ALONE_MS = 2000;

/** What the gain of a bench depends on. */
export interface GainParts {
  bench: Pick<Bench, 'file' | 'model' | 'listener' | 'stands' | 'sampleRate' | 'dragging'>;
  waves: Pick<WaveAnswers, 'draft'> | null;
  cache: Pick<SoundCache, 'loop' | 'horn'>;
  headroom: Pick<Headroom, 'gain' | 'surelyHasRoom'>;
  playback: Pick<Playback, 'room' | 'hasPlayed' | 'tell'>;
  /** The peak of what plays beside the mounts. */
  besides: () => number;
}

/** The one gain of the bench, in step with all that it must have room for: nothing is ever played louder than that. */
export class BenchGain {
  #parts: GainParts;
  #value = $state<number | null>(null);
  /** The model for which it was found: nothing of another one is played before there is room for it. */
  #model = $state<ModelName | null>(null);
  /** The lift for which it was found: nothing that is lifted more is played before there is room for it. */
  #lift = $state.raw<Lift | null>(null);
  /** The peak beside the mounts for which there is room. */
  roomBeside = $state(0);
  /** Whether it was found for all that can sound: the highest notch of a lever, and the horn on top of it. */
  #forAll = $state(false);
  /** Counts how often it was to be found anew. */
  #anew = $state(0);
  #newest: NewestWins;

  constructor(parts: GainParts) {
    this.#parts = parts;
    const { playback } = parts;
    const leftAlone = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, LEFT_ALONE_MS));
    this.#newest = new NewestWins({
      replaces: 'running',
      pause: () => (playback.hasPlayed ? null : leftAlone()),
      tell: playback.tell
    });
  }

  /** Keeps it in step with the bench and the loop. Call while a component starts. */
  connect(current: () => Loop | null): void {
    const { bench, playback } = this.#parts;
    $effect(() => {
      const loop = current();
      void [this.#anew, playback.hasPlayed];
      if (!loop || bench.dragging) return;
      const { model, file } = bench;
      const besides = this.#parts.besides();
      const reaches = this.#before(model).map((one) => ({ model: one, reach: this.#reach(one) }));
      this.#newest.run(async (signal) => {
        for (const { model, reach } of reaches) {
          const gain = await this.#find(loop, reach, true, besides);
          if (signal.aborted) return;
          this.#take(gain, model, besides, file.lift);
          this.#forAll = true;
        }
      });
      return () => this.#newest.withdraw();
    });

    $effect(() => {
      if (this.#value !== null) playback.room?.setBenchGain(this.#value);
    });
  }

  /** Whether it has room for all that can sound, and not only for what plays first. */
  get hasRoomForAll(): boolean {
    return this.#forAll;
  }

  /** What it is; 0 until it is known. */
  get value(): number {
    return this.#value ?? 0;
  }

  /**
   * Whether what is known of a stand may be played. Where the chosen model is awaited, another stands in: there is room for that
   * in any case. What is lifted more than there is room for waits.
   */
  hasRoomFor({ computed }: Stand): boolean {
    const chosen = this.#model;
    if (!computed || chosen === null) return true;
    if (!isWithin(computed.answer.lift, this.#lift)) return false;
    return computed.answer.model === chosen || computed.answer.model === models[chosen].standIn;
  }

  /**
   * Finds it before the first sound, which waits for no model that is awaited (the one that stands in is heard first), and neither for the
   * horn nor for another notch: there is room for those before they sound.
   */
  async prepare(loop: Loop): Promise<number> {
    const [model] = this.#before(this.#parts.bench.model);
    const { lift } = this.#parts.bench.file;
    const besides = untrack(() => this.#parts.besides());
    const knewAll = this.#forAll;
    const gain = await this.#first(loop, this.#reach(model), besides);
    // What was found meanwhile for all that can sound, or for the chosen model, has room for this as well, and is not taken back.
    const forChosen = this.#model !== model && this.#model === this.#parts.bench.model;
    if (this.#value !== null && (forChosen || this.#forAll !== knewAll)) return this.#value;
    this.#take(gain, model, besides, lift);
    return gain;
  }

  #take(gain: number, model: ModelName, besides: number, lift: Lift | null = null): void {
    [this.#value, this.#model, this.#lift, this.roomBeside] = [gain, model, lift, besides];
  }

  /** The models for which it is found, one after the other: before there is room for anything, what stands in comes first. */
  #before(model: ModelName): [ModelName, ...ModelName[]] {
    const { standIn } = models[model];
    return standIn === null || untrack(() => this.#model) === model ? [model] : [standIn, model];
  }

  /**
   * Makes room for another loop before it plays. A lever that can go higher is asked about while it plays, and takes longer
   * to get there.
   */
  async makeRoom(loop: Loop, signal: AbortSignal): Promise<void> {
    const [model] = this.#before(this.#parts.bench.model);
    const besides = untrack(() => this.#parts.besides());
    const gain = await this.#find(loop, this.#reach(model), false, besides);
    if (signal.aborted || (this.#value !== null && gain >= this.#value)) return;
    this.#value = gain;
    this.#parts.playback.room?.setBenchGain(gain);
  }

  /** Finds it anew: what room was made for plays no more. */
  findAnew(): void {
    this.#anew++;
  }

  #reach(model: ModelName): Reach {
    return reachOfBench(this.#parts.bench, this.#parts.waves, model);
  }

  /** The gain for this loop: with the horn and all notches where that was asked already, by itself before. */
  async #first(loop: Loop, reach: Reach, besides: number): Promise<number> {
    if (this.#forAll) return this.#find(loop, reach, true, besides);
    const { headroom } = this.#parts;
    if (await headroom.surelyHasRoom(reach, loop.samples, besides)) return USUAL_GAIN;
    return headroom.gain(reach, [[loop]], besides);
  }

  /** The gain for this loop with the horn on top of it; with `all`, for whatever notch its lever can go to. */
  async #find(loop: Loop, reach: Reach, all: boolean, besides: number): Promise<number> {
    const { cache, headroom } = this.#parts;
    const { sound } = loop;
    const loops = [loop];
    // A machine is loudest at its highest notch.
    if (all && isMoving(sound) && !sound.runPast)
      loops.push((await cache.loop({ ...sound, notch: FULL_NOTCH }, null, reach.sampleRate))!);
    const horn = await cache.horn(sound, reach.sampleRate);
    return headroom.gain(reach, [loops, [horn]], besides);
  }
}
