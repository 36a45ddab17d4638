import { AudioBufferSourceNode, type IAudioNode } from 'standardized-audio-context';
import type { Seconds } from '../units.js';
import { monoBuffer } from './mono-buffer.js';
import { SmoothGain } from './smooth-gain.js';
import { FADE } from './smoother.js';
import { begunBy, type SoundContext } from './sound-context.js';

export interface Loading {
  fade: Seconds;
  law: 'equalGain' | 'equalPower';
  /** Sample from which it goes round, once what is before it has been played. */
  loopFrom?: number;
  /** The context's time at which sample 0 is due; if that is over, it begins where it would be by now. */
  at?: Seconds;
}

interface Voice {
  gain: SmoothGain;
  /** When its end begins; Infinity while none is planned. */
  ends: Seconds;
  /** Fades the loop out and takes it out of the graph. */
  end(fade: Seconds, when: Seconds): void;
}

/** A loop that never stops, and that can be exchanged for another one by a fade, at any time. */
export class LoopedSource {
  readonly #context: SoundContext;
  readonly #output: IAudioNode<SoundContext>;
  readonly #ending = new Set<Voice>();
  #voice: Voice | null = null;

  constructor(context: SoundContext, output: IAudioNode<SoundContext>) {
    this.#context = context;
    this.#output = output;
  }

  /** Play these samples (at the sample rate of the context) from now on; an empty array fades to silence. */
  load(samples: Float32Array, { fade, law, loopFrom = 0, at }: Loading): void {
    const { currentTime, sampleRate } = this.#context;
    const when = at === undefined ? currentTime : Math.max(at, begunBy(this.#context) / sampleRate);
    const old = this.#voice;
    if (old) this.#ending.add(old);
    // What was to end later than this makes way now.
    for (const voice of this.#ending) if (voice.ends > when) voice.end(fade, when);
    this.#voice = samples.length > 0 ? this.#voiceOf(samples, loopFrom, when, at ?? when) : null;
    if (fade <= FADE) this.#voice?.gain.step(1, when);
    else if (law === 'equalPower') this.#voice?.gain.complement(fade - FADE, when);
    else this.#voice?.gain.approach(1, fade - FADE, when);
  }

  #voiceOf(samples: Float32Array, loopFrom: number, when: Seconds, at: Seconds): Voice {
    const context = this.#context;
    const { sampleRate } = context;
    const source = new AudioBufferSourceNode<SoundContext>(context, {
      buffer: monoBuffer(context, samples),
      loop: true,
      loopStart: loopFrom / sampleRate,
      loopEnd: samples.length / sampleRate
    });
    const gain = new SmoothGain(context, 0);
    source.connect(gain.node).connect(this.#output);
    source.start(when, when - at);
    let stopping: ReturnType<typeof setTimeout> | undefined;
    const voice: Voice = {
      gain,
      ends: Infinity,
      end: (fade, start) => {
        voice.ends = start;
        if (fade <= FADE) gain.step(0, start);
        else gain.approach(0, fade - FADE, start);
        source.onended = () => {
          this.#ending.delete(voice);
          source.disconnect();
          gain.leave();
        };
        // Told to stop only when it is silent: being told, a source may be without sound for a moment. A quarter of a second
        // for what is under way.
        const silentIn = Math.max(start - context.currentTime, 0) + Math.max(fade, FADE) + 0.25;
        clearTimeout(stopping);
        stopping = setTimeout(() => source.stop(), silentIn * 1000);
      }
    };
    return voice;
  }
}
