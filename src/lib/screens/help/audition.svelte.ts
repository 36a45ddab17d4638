import type { Listener, Place } from '../../acoustics/listener.js';
import type { Seconds } from '../../units.js';
import type { Stand } from '../../evaluation/stand.js';
import { standOf, type HeardMount } from './heard-mount.js';

/** Where a step has two mounts to hear they take turns. */
export const TURN: Seconds = 2.5;

/** What an audition asks of the bench and its sound. */
interface Bench {
  readonly stands: Stand[];
  readonly heard: Stand;
  readonly file: { listener: Pick<Listener, 'board'> };
  hear(index: number): void;
  listenOn(place: Place): void;
}
interface Sounding {
  readonly playing: boolean;
  readonly silenced: boolean;
  stop(): void;
  silence(on: boolean): void;
}

/** Lets the steps of the explanation be heard on the bench's own mounts, and puts back what was heard before, and where. */
export class Audition {
  /** Number of the step that is heard; null while none is. */
  step = $state<number | null>(null);

  #bench: Bench;
  #sounding: Sounding;
  #before: { heard: number; place: Place; playing: boolean; silenced: boolean } | null = null;
  #timer: ReturnType<typeof setInterval> | undefined;

  constructor(bench: Bench, sounding: Sounding) {
    this.#bench = bench;
    this.#sounding = sounding;
  }

  /**
   * Hears the mounts of a step, in turns where it has several; on the layout where it says so, else where one listened before. Nothing
   * happens where the shelf lacks one.
   */
  hear(step: number, wanted: readonly HeardMount[], onLayout = false): void {
    const stands = wanted.map((one) => standOf(one, this.#bench.stands));
    if (stands.includes(null)) return;
    const { playing, silenced } = this.#sounding;
    this.#before ??= { heard: this.#bench.heard.index, place: this.#place, playing, silenced };
    this.#endTurns();
    this.step = step;
    this.#bench.listenOn(onLayout ? 'layout' : this.#before.place);
    if (silenced) this.#sounding.silence(false);
    let turn = 0;
    const next = (): void => this.#bench.hear(stands[turn++ % stands.length]!.index);
    next();
    if (stands.length > 1) this.#timer = setInterval(next, TURN * 1000);
  }

  /** Puts back what was heard before the first step: the mount, and whether anything played. */
  stop(): void {
    this.#endTurns();
    this.step = null;
    const before = this.#before;
    this.#before = null;
    if (!before) return;
    this.#bench.hear(before.heard);
    this.#bench.listenOn(before.place);
    if (!before.playing) this.#sounding.stop();
    if (before.silenced) this.#sounding.silence(true);
  }

  get #place(): Place {
    return this.#bench.file.listener.board ? 'layout' : 'hand';
  }

  #endTurns(): void {
    clearInterval(this.#timer);
    this.#timer = undefined;
  }
}
