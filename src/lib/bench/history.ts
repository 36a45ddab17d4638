import type { Seconds } from '../units.js';

/** Changes of the same kind that follow each other this fast are one step back. */
const TOGETHER: Seconds = 0.8;

/** How many steps back are kept. */
const DEPTH = 200;

/** One plain value with the way back and forth through its earlier states. Values are replaced, never mutated. */
export class History<T> {
  #past: T[] = [];
  #future: T[] = [];
  #present: T;
  #lastKind: string | null = null;
  #lastTime = -Infinity;

  constructor(present: T) {
    this.#present = present;
  }

  get present(): T {
    return this.#present;
  }

  get canUndo(): boolean {
    return this.#past.length > 0;
  }

  get canRedo(): boolean {
    return this.#future.length > 0;
  }

  /**
   * A new state. Changes of one `kind` (a drag of one knob, typing in one field) that follow each other closely
   * become one step; null never joins another. `now` is in seconds.
   */
  change(next: T, kind: string | null, now: Seconds): void {
    const joins = kind !== null && kind === this.#lastKind && now - this.#lastTime < TOGETHER;
    if (!joins) {
      this.#past.push(this.#present);
      if (this.#past.length > DEPTH) this.#past.shift();
    }
    this.#present = next;
    this.#future = [];
    this.#lastKind = kind;
    this.#lastTime = now;
  }

  /** Replaces the present without a step: for what is looked at or listened to, not worked on. */
  amend(next: T): void {
    this.#present = next;
  }

  undo(): void {
    const earlier = this.#past.pop();
    if (earlier === undefined) return;
    this.#future.push(this.#present);
    this.#present = earlier;
    this.#lastKind = null;
  }

  redo(): void {
    const later = this.#future.pop();
    if (later === undefined) return;
    this.#past.push(this.#present);
    this.#present = later;
    this.#lastKind = null;
  }
}
