import { cubicInOut } from 'svelte/easing';
import { prefersReducedMotion, Tween } from 'svelte/motion';
import type { Seconds } from '../units.js';

const SLIDING: Seconds = 0.6;

/** A mount that has just been chosen slides in around the speaker; with reduced motion it is there at once. */
export class Entrance {
  #share = new Tween(1, { easing: cubicInOut });
  #entered: number;

  /** @param index the mount that is there already */
  constructor(index: number) {
    this.#entered = index;
  }

  /** How far it has come, 0 … 1. */
  get share(): number {
    return this.#share.current;
  }

  /** Call from an effect with the mount that is heard. */
  show(index: number): void {
    if (index === this.#entered) return;
    this.#entered = index;
    if (prefersReducedMotion.current) return;
    void this.#share.set(0, { duration: 0 }).then(() => this.#share.set(1, { duration: SLIDING * 1000 }));
  }
}
