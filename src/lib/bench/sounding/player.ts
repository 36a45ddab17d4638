import type { ListeningRoom } from '../../audio/listening-room.js';
import { isMoving } from '../../sounds/kinds.js';
import type { Hertz, Seconds } from '../../units.js';
import type { BenchSound } from '../../file/bench-file.js';
import type { Loop, SoundCache } from './sound-cache.js';
import { MotionTracker } from './motion-tracker.js';

/** A loop begins so long after it was asked for, so that its beginning is known to the sample. */
const NOTICE: Seconds = 0.03;

/** And a ride after this time, in which it is made; if that takes longer, it begins where it would be by then. */
const RENDERING: Seconds = 0.18;

/** What plays in the room: another loop is faded to, a moved lever is a ride from where the machine is. */
export class Player {
  /** The loop that plays, or that the ride under way ends in. */
  loop: Loop | null = null;

  readonly #room: Pick<ListeningRoom, 'now' | 'setSound'>;
  readonly #cache: Pick<SoundCache, 'ride'>;
  readonly #tracker = new MotionTracker();

  constructor(room: Pick<ListeningRoom, 'now' | 'setSound'>, cache: Pick<SoundCache, 'ride'>) {
    this.#room = room;
    this.#cache = cache;
  }

  /** Fades to a loop, and notes when it begins. */
  exchange(loop: Loop, fade?: Seconds): void {
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
    const arrived = await loop;
    if (this.#tracker.isBoundFor(sound)) this.loop = arrived;
    return arrived;
  }
}
