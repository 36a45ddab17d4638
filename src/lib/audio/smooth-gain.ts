import { ConstantSourceNode, GainNode } from 'standardized-audio-context';
import type { IAudioParam, IConstantSourceNode, IConvolverNode, IGainNode } from 'standardized-audio-context';
import type { Seconds } from '../units.js';
import { smoother } from './smoother.js';
import type { SoundContext } from './sound-context.js';

/** A rise has so many straight pieces; the smoother rounds their corners. */
const PIECES = 32;

/**
 * A gain that cannot click, whatever it is told and whenever: a constant source says where it should be, in plain
 * steps and slopes, and a smoother makes of that what drives the gain, sample by sample.
 */
export class SmoothGain {
  readonly node: IGainNode<SoundContext>;
  readonly #context: SoundContext;
  readonly #control: IConstantSourceNode<SoundContext>;
  readonly #smoother: IConvolverNode<SoundContext>;
  #target: number;

  constructor(context: SoundContext, gain: number) {
    this.#context = context;
    this.#target = gain;
    this.node = new GainNode<SoundContext>(context, { gain: 0 });
    this.#control = new ConstantSourceNode<SoundContext>(context, { offset: gain });
    this.#smoother = smoother(context, 0);
    this.#control.connect(this.#smoother).connect(this.node.gain);
    this.#control.start();
  }

  /** Go there by a raised cosine of 25 ms, from `when` on; what was to come after that is forgotten. */
  step(gain: number, when: Seconds = this.#context.currentTime): void {
    if (gain === this.#target) return;
    this.#target = gain;
    this.#control.offset.cancelScheduledValues(when);
    this.#control.offset.setValueAtTime(gain, when);
  }

  /** Go there within `duration`, fast at first: what is left falls by e every fifth of it. */
  approach(gain: number, duration: Seconds, when?: Seconds): void {
    this.#target = gain;
    const { offset, from } = this.#hold(when);
    offset.setTargetAtTime(gain, from, duration / 5);
    offset.setValueAtTime(gain, from + duration);
  }

  /** Rise from 0 to 1 so that the power complements that of an `approach` to 0: for uncorrelated sounds. */
  complement(duration: Seconds, when?: Seconds): void {
    this.#target = 1;
    const { offset, from } = this.#hold(when);
    offset.setValueAtTime(0, from);
    // Straight pieces, since a curve could not be interrupted at a time to come.
    for (let i = 1; i <= PIECES; i++) {
      const share = i === PIECES ? 1 : Math.sqrt(1 - Math.exp((-10 * i) / PIECES));
      offset.linearRampToValueAtTime(share, from + (i * duration) / PIECES);
    }
  }

  /** Takes it out of the graph for good. */
  leave(): void {
    this.#control.stop();
    this.#control.disconnect();
    this.#smoother.disconnect();
    this.node.disconnect();
  }

  /** Forgets what was scheduled from `when` on and stays where it is until then. */
  #hold(when?: Seconds): { offset: IAudioParam; from: Seconds } {
    const { offset } = this.#control;
    const now = this.#context.currentTime;
    if (when !== undefined && when > now) {
      offset.cancelScheduledValues(when);
      return { offset, from: when };
    }
    const { value } = offset;
    offset.cancelScheduledValues(0);
    offset.setValueAtTime(value, now);
    return { offset, from: now };
  }
}
