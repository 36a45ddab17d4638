import { AudioBufferSourceNode, type IAudioNode } from 'standardized-audio-context';
import type { Seconds } from '../units.js';
import { monoBuffer } from './mono-buffer.js';
import { SmoothGain } from './smooth-gain.js';
import { FADE } from './smoother.js';
import type { SoundContext } from './sound-context.js';

interface Voice {
  gain: SmoothGain;
  /** Fades the loop out and takes it out of the graph. */
  end(fade: Seconds): void;
}

/** A loop that never stops, and that can be exchanged for another one by a fade, at any time. */
export class LoopedSource {
  readonly #context: SoundContext;
  readonly #output: IAudioNode<SoundContext>;
  #voice: Voice | null = null;

  constructor(context: SoundContext, output: IAudioNode<SoundContext>) {
    this.#context = context;
    this.#output = output;
  }

  /** Play these samples (at the sample rate of the context) from now on; an empty array fades to silence. */
  load(samples: Float32Array, fade: Seconds, law: 'equalGain' | 'equalPower'): void {
    const old = this.#voice;
    this.#voice = samples.length > 0 ? this.#voiceOf(samples) : null;
    old?.end(fade);
    if (fade <= FADE) this.#voice?.gain.step(1);
    else if (law === 'equalPower') this.#voice?.gain.complement(fade - FADE);
    else this.#voice?.gain.approach(1, fade - FADE);
  }

  #voiceOf(samples: Float32Array): Voice {
    const context = this.#context;
    const source = new AudioBufferSourceNode<SoundContext>(context, {
      buffer: monoBuffer(context, samples),
      loop: true
    });
    const gain = new SmoothGain(context, 0);
    source.connect(gain.node).connect(this.#output);
    source.start();
    return {
      gain,
      end: (fade) => {
        if (fade <= FADE) gain.step(0);
        else gain.approach(0, fade - FADE);
        source.onended = () => {
          source.disconnect();
          gain.leave();
        };
        // A quarter of a second for the main thread to be late.
        source.stop(context.currentTime + Math.max(fade, FADE) + 0.25);
      }
    };
  }
}
