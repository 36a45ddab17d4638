import { ConstantSourceNode, GainNode } from 'standardized-audio-context';
import type { IAudioParam, IConstantSourceNode, IConvolverNode, IGainNode } from 'standardized-audio-context';
import type { Seconds } from '../units.js';
import { smoother } from './smoother.js';
import type { SoundContext } from './sound-context.js';

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

  /** Go there by a raised cosine of 25 ms. */
  step(gain: number): void {
    if (gain === this.#target) return;
    this.#target = gain;
    this.#control.offset.cancelScheduledValues(0);
    this.#control.offset.setValueAtTime(gain, this.#context.currentTime);
  }

  /** Go there within `duration`, fast at first: what is left falls by e every fifth of it. */
  approach(gain: number, duration: Seconds): void {
    this.#target = gain;
    const { offset, now } = this.#hold();
    offset.setTargetAtTime(gain, now, duration / 5);
    offset.setValueAtTime(gain, now + duration);
  }

  /** Rise from 0 to 1 so that the power complements that of an `approach` to 0: for uncorrelated sounds. */
  complement(duration: Seconds): void {
    this.#target = 1;
    const { offset, now } = this.#hold();
    const curve = Float32Array.from({ length: 257 }, (_, i) => Math.sqrt(1 - Math.exp((-10 * i) / 256)));
    curve[256] = 1;
    offset.setValueCurveAtTime(curve, now, duration);
  }

  /** Takes it out of the graph for good. */
  leave(): void {
    this.#control.stop();
    this.#control.disconnect();
    this.#smoother.disconnect();
    this.node.disconnect();
  }

  /** Forgets what was scheduled and stays where it is. */
  #hold(): { offset: IAudioParam; now: Seconds } {
    const { offset } = this.#control;
    const now = this.#context.currentTime;
    const { value } = offset;
    offset.cancelScheduledValues(0);
    offset.setValueAtTime(value, now);
    return { offset, now };
  }
}
