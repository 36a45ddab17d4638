import { type MovingSound, movingKind } from '../../sounds/kinds.js';
import { type Motion, settledAt, TICK } from '../../sounds/motion/motion.js';
import { wayTo } from '../../sounds/motion/ride.js';
import { machineKey } from '../../sounds/sound-key.js';
import type { Seconds } from '../../units.js';

/** Follows how the machine runs that sounds: what a moved lever must begin from. All times are those of the room's clock. */
export class MotionTracker {
  #sound: MovingSound | null = null;
  #begun: Seconds = 0;
  /** The ride before the loop, a tick apart; one motion where there is none. */
  #way: Motion[] = [];
  #loop: Seconds = 1;

  /** Nothing sounds that has a lever. */
  stop(): void {
    this.#sound = null;
  }

  /** The loop of this machine begins at this time. */
  loop(sound: MovingSound, at: Seconds, loop: Seconds): void {
    this.#sound = sound;
    this.#begun = at;
    this.#way = [settledAt(movingKind(sound).target(sound))];
    this.#loop = loop;
  }

  /** It rides to its notch from this motion, beginning at this time. */
  ride(sound: MovingSound, from: Motion, at: Seconds, loop: Seconds): void {
    this.#sound = sound;
    this.#begun = at;
    this.#way = wayTo(movingKind(sound), sound, from);
    this.#loop = loop;
  }

  /**
   * The ride that is under way goes on at this time, and what is to come of it is known.
   * @returns how the machine runs then; null where it does not ride then
   */
  goOn(at: Seconds): Motion | null {
    if (!this.#sound) return null;
    const tick = Math.round((at - this.#begun) / TICK);
    const from = this.#way[tick];
    if (!from) return null;
    this.#way = [...this.#way.slice(0, tick), ...wayTo(movingKind(this.#sound), this.#sound, from)];
    return from;
  }

  /** Whether this machine runs at its notch or rides there. */
  isBoundFor(sound: MovingSound): boolean {
    return (
      this.#sound !== null &&
      this.#sound.notch === sound.notch &&
      machineKey(sound) === machineKey(this.#sound)
    );
  }

  /** How the machine runs at this time, if this sound is the same one at another notch; null if it is not. */
  motionFor(sound: MovingSound, time: Seconds): Motion | null {
    if (!this.#sound || sound.runPast || machineKey(sound) !== machineKey(this.#sound)) return null;
    if (sound.notch === this.#sound.notch) return null;
    const ticks = Math.round((time - this.#begun) / TICK);
    if (ticks < this.#way.length) return this.#way[Math.max(0, ticks)];
    const rest = settledAt(movingKind(this.#sound).target(this.#sound));
    const seconds = ((ticks - this.#way.length + 1) * TICK) % this.#loop;
    return { ...rest, turns: rest.speed * seconds, seconds };
  }
}
