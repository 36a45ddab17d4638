import type { ListeningRoom } from '../../audio/listening-room.js';
import { isMoving, type MovingSound } from '../../sounds/kinds.js';
import type { Hertz, Seconds } from '../../units.js';
import type { BenchSound } from '../../file/bench-file.js';
import type { Loop, SoundCache } from './sound-cache.js';
import { MotionTracker } from './motion-tracker.js';

/** A loop begins so long after it was asked for, so that its beginning is known to the sample. */
const NOTICE: Seconds = 0.03;

/** And a ride after this time, in which it is made; if that takes longer, it begins where it would be by then. */
const RENDERING: Seconds = 0.18;

/** A ride that has not come to rest goes on in another one so long before its end, which is scheduled this long before. */
const OVERLAP: Seconds = 1;
const AHEAD: Seconds = 0.5;

/** What plays in the room: another loop is faded to, a moved lever is a ride from where the machine is. */
export class Player {
  /** The loop that plays, or that the ride under way ends in. */
  loop: Loop | null = null;

  readonly #room: Pick<ListeningRoom, 'now' | 'setSound'>;
  readonly #cache: Pick<SoundCache, 'ride'>;
  readonly #tracker = new MotionTracker();
  /** Counts what was begun: what goes on with something older is left. */
  #begun = 0;

  constructor(room: Pick<ListeningRoom, 'now' | 'setSound'>, cache: Pick<SoundCache, 'ride'>) {
    this.#room = room;
    this.#cache = cache;
  }

  /** Fades to a loop, and notes when it begins. */
  exchange(loop: Loop, fade?: Seconds): void {
    this.#begun++;
    this.loop = loop;
    const at = this.#room.now + NOTICE;
    this.#room.setSound(loop.samples, { at, fade });
    const { sound } = loop;
    if (isMoving(sound) && !sound.runPast)
      this.#tracker.loop(sound, at, loop.samples.length / loop.sampleRate);
    else this.#tracker.stop();
  }

  /**
   * Where the machine that plays has its lever moved, it rides there; null where this is another sound. Nothing is
   * scheduled if another sound has been asked for while the ride was made.
   */
  async ride(sound: BenchSound, sampleRate: Hertz, signal: AbortSignal): Promise<Loop | null> {
    if (!isMoving(sound)) return null;
    const at = this.#room.now + RENDERING;
    const from = this.#tracker.motionFor(sound, at);
    if (!from) return null;
    const { ride, loop } = await this.#cache.ride(sound, from, sampleRate);
    if (signal.aborted) return null;
    const { samples, loopFrom } = ride;
    this.#room.setSound(samples, { fade: 0, equalPower: false, loopFrom, at });
    this.#tracker.ride(sound, from, at, (samples.length - loopFrom) / sampleRate);
    this.#begun++;
    // Where the rest cannot be made, the loop sounds already.
    if (ride.goesOn) this.#goOn(sound, sampleRate, at + loopFrom / sampleRate).catch(() => undefined);
    const arrived = await loop;
    if (this.#tracker.isBoundFor(sound)) this.loop = arrived;
    return arrived;
  }

  /** A long ride is made in pieces: while one sounds the next is made, so that the lever need not wait for the whole of it. */
  async #goOn(sound: MovingSound, sampleRate: Hertz, end: Seconds): Promise<void> {
    const begun = this.#begun;
    const at = end - OVERLAP;
    const from = this.#tracker.goOn(at);
    if (!from) return;
    const { ride } = await this.#cache.ride(sound, from, sampleRate);
    while (begun === this.#begun && this.#room.now < at - AHEAD)
      await new Promise((resolve) => setTimeout(resolve, 1000 * (at - AHEAD - this.#room.now)));
    if (begun !== this.#begun) return;
    const { samples, loopFrom, goesOn } = ride;
    this.#room.setSound(samples, { fade: 0, equalPower: false, loopFrom, at });
    if (goesOn) await this.#goOn(sound, sampleRate, at + loopFrom / sampleRate);
  }
}
