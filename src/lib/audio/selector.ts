import { ConstantSourceNode, GainNode, WaveShaperNode } from 'standardized-audio-context';
import type { IAudioParam, IGainNode } from 'standardized-audio-context';
import type { Seconds } from '../units.js';
import { smoother } from './smoother.js';
import type { SoundContext } from './sound-context.js';

/**
 * Several gains of which one is 1 and the others are 0; choosing another one is an equal-gain fade of 25 ms, also in
 * the middle of a fade. The gains add up to 1 at every sample: one number says which is chosen, a table for each
 * gain makes 1 or 0 of it, and filters of one kind smooth them all. Gains set one by one would move apart
 * whenever the audio thread renders between two of the settings.
 */
export class Selector {
  readonly gains: IGainNode<SoundContext>[];
  readonly #context: SoundContext;
  readonly #number: IAudioParam;
  #chosen: number;

  constructor(
    context: SoundContext,
    count: number,
    { chosen = 0, delay = 0 }: { chosen?: number; delay?: Seconds } = {}
  ) {
    this.#context = context;
    this.#chosen = chosen;
    // A table reaches from −1 to 1 and has at least two entries.
    const entries = Math.max(2, count);
    const number = new ConstantSourceNode<SoundContext>(context, { offset: place(chosen, entries) });
    this.#number = number.offset;
    // The first gain is what the others leave of 1, which spares its filter.
    const first = new GainNode<SoundContext>(context, { gain: 1 });
    const inverted = new GainNode<SoundContext>(context, { gain: -1 });
    inverted.connect(first.gain);
    const others = Array.from({ length: count - 1 }, (_, i) => {
      const curve = Float32Array.from({ length: entries }, (_, entry) => (entry === i + 1 ? 1 : 0));
      const table = new WaveShaperNode<SoundContext>(context, { curve, channelCount: 1 });
      const smooth = smoother(context, delay);
      const node = new GainNode<SoundContext>(context, { gain: 0 });
      number.connect(table).connect(smooth).connect(node.gain);
      smooth.connect(inverted);
      return node;
    });
    this.gains = [first, ...others];
    number.start();
  }

  get chosen(): number {
    return this.#chosen;
  }

  /** At once, or at a time to come. */
  choose(index: number, when?: Seconds): void {
    if (index === this.#chosen) return;
    this.#chosen = index;
    const { currentTime } = this.#context;
    this.#number.cancelScheduledValues(when === undefined ? 0 : currentTime);
    this.#number.setValueAtTime(place(index, Math.max(2, this.gains.length)), when ?? currentTime);
  }
}

/** Where a table of so many entries is to be looked up for this entry. */
function place(entry: number, entries: number): number {
  return -1 + (2 * entry) / (entries - 1);
}
