const NativeOffline = window.OfflineAudioContext;

type Native = BaseAudioContext & { baseLatency: number };

interface Timer {
  due: number;
  act: () => void;
}

/**
 * A context that the library takes for a live one and whose clock is driven: it renders as far as it is told and waits
 * there. So what turns the knobs comes on time, however busy the machine is, and a second is rendered in a tenth.
 * Timers that are set meanwhile keep its time.
 */
export class DrivenContext extends NativeOffline implements Native {
  static last: DrivenContext;
  /** Seconds that the next one can be rendered for. */
  static seconds = 1;

  /** As of a device that asks for 10 ms at a time. */
  readonly baseLatency = 0.01;
  #state: AudioContextState = 'suspended';
  #rendered: Promise<AudioBuffer> | null = null;
  readonly #timers = new Map<number, Timer>();
  #numbers = 0;

  constructor({ sampleRate = 48000 }: AudioContextOptions = {}) {
    super({ numberOfChannels: 2, length: Math.ceil(DrivenContext.seconds * sampleRate), sampleRate });
    DrivenContext.last = this;
  }

  override get state(): AudioContextState {
    return this.#state;
  }

  override resume(): Promise<void> {
    this.#become('running');
    return Promise.resolve();
  }

  close(): Promise<void> {
    this.#become('closed');
    return Promise.resolve();
  }

  /** Renders so many seconds while the page is held up: no timer comes. */
  hold(seconds: number): Promise<void> {
    return this.#renderTo(this.currentTime + seconds);
  }

  /** Renders so many seconds, to the next whole quantum of 128 frames, and stops where a timer is due. */
  async advance(seconds: number): Promise<void> {
    const end = this.currentTime + seconds;
    for (;;) {
      const [next] = [...this.#timers].sort(([, a], [, b]) => a.due - b.due);
      if (!next || next[1].due > end) break;
      await this.#renderTo(next[1].due);
      this.#timers.delete(next[0]);
      next[1].act();
    }
    await this.#renderTo(end);
  }

  /** Renders to the end; everything that was heard. */
  async finish(): Promise<Float32Array> {
    void super.resume();
    return (await this.#rendered!).getChannelData(0);
  }

  /** `act` with this context's time in `setTimeout`. */
  async keepingTime<T>(act: () => Promise<T>): Promise<T> {
    const { setTimeout, clearTimeout } = window;
    const set = (act: () => void, ms = 0): number => {
      this.#timers.set(++this.#numbers, { due: this.currentTime + ms / 1000, act });
      return this.#numbers;
    };
    Object.assign(window, { setTimeout: set, clearTimeout: (number: number) => this.#timers.delete(number) });
    try {
      return await act();
    } finally {
      Object.assign(window, { setTimeout, clearTimeout });
    }
  }

  async #renderTo(time: number): Promise<void> {
    const quantum = 128 / this.sampleRate;
    const at = Math.ceil(time / quantum - 1e-6) * quantum;
    if (at <= this.currentTime) return;
    if (at * this.sampleRate >= this.length) throw new RangeError(`the context ends before ${at} s`);
    const there = this.suspend(at);
    if (this.#rendered) void super.resume();
    else this.#rendered = this.startRendering();
    await there;
  }

  #become(state: AudioContextState): void {
    if (state === this.#state) return;
    this.#state = state;
    this.dispatchEvent(new Event('statechange'));
  }
}

// The library takes the constructors from the window when it is loaded, and looks whether a context is an off-line one.
Object.assign(window, { AudioContext: DrivenContext, OfflineAudioContext: class extends NativeOffline {} });
