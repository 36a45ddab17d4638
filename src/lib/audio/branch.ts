import { ConvolverNode, type IAudioNode, type IConvolverNode } from 'standardized-audio-context';
import type { Seconds } from '../units.js';
import { monoBuffer } from './mono-buffer.js';
import { Selector } from './selector.js';
import { FADE } from './smoother.js';
import { begunBy, isFlowing, renderedUntil, type SoundContext } from './sound-context.js';

/** How long a filter runs unheard before its fade begins: its pre-delay and the steep part of its response. */
const FILLING: Seconds = 0.008;

/**
 * One mount's filter: two convolvers side by side, of which one is in use. A new impulse response goes into the
 * other one, which is silent, and the two are faded. While a fade is under way the newest impulse response waits,
 * and the ones between are dropped.
 */
export class Branch {
  readonly #context: SoundContext;
  readonly #convolvers: IConvolverNode<SoundContext>[];
  readonly #inUse: Selector;
  /** The frame from which on nothing of the convolver that is not in use is heard. */
  #silentFrom = 0;
  #waiting: Float32Array | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(context: SoundContext, input: IAudioNode<SoundContext>, output: IAudioNode<SoundContext>) {
    this.#context = context;
    this.#inUse = new Selector(context, 2, { delay: FILLING });
    this.#convolvers = this.#inUse.gains.map((gain) => {
      const convolver = new ConvolverNode<SoundContext>(context, {
        disableNormalization: true,
        channelCount: 1,
        channelCountMode: 'explicit'
      });
      input.connect(convolver).connect(gain).connect(output);
      return convolver;
    });
  }

  /** Filter with this impulse response from now on (at the sample rate of the context). */
  load(impulseResponse: Float32Array): void {
    this.#waiting = impulseResponse;
    this.settle();
  }

  /** Do what waits, if it can be done now; to be called when the context starts or stops too. */
  settle(): void {
    clearTimeout(this.#timer);
    if (!this.#waiting) return;
    const { sampleRate } = this.#context;
    const isHeard = isFlowing(this.#context);
    const left = isHeard ? this.#silentFrom - renderedUntil(this.#context) : 0;
    if (left > 0) {
      this.#timer = setTimeout(() => this.settle(), Math.ceil((left / sampleRate) * 1000));
      return;
    }
    const { chosen } = this.#inUse;
    const next = isHeard ? 1 - chosen : chosen;
    this.#convolvers[next].buffer = monoBuffer(this.#context, this.#waiting);
    this.#waiting = null;
    if (next === chosen) return;
    this.#inUse.choose(next);
    this.#silentFrom = begunBy(this.#context) + Math.ceil((FILLING + FADE) * sampleRate);
  }

  close(): void {
    clearTimeout(this.#timer);
    this.#waiting = null;
  }
}
