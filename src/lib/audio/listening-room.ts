import {
  ConstantSourceNode,
  GainNode,
  type IAudioContext,
  type IAudioNode,
  type IGainNode
} from 'standardized-audio-context';
import { USUAL_RATE } from '../sounds/blocks/sample-rate.js';
import type { Hertz, Seconds } from '../units.js';
import { Branch } from './branch.js';
import { playEarCheck } from './ear-check.js';
import { LoopedSource } from './looped-source.js';
import { openContext, wake } from './open-context.js';
import { Selector } from './selector.js';
import { SmoothGain } from './smooth-gain.js';
import { FADE } from './smoother.js';
import { begunBy, isFlowing, type SoundContext } from './sound-context.js';

export type RoomState = 'running' | 'suspended' | 'closed' | 'interrupted';

const PREFERRED_BRANCHES = 6;
const PATIENCE: Seconds = 3;

/** The first sound rises out of silence. */
const ENTRANCE: Seconds = 0.3;
const BENCH: Seconds = 0.3;
const EXCHANGE: Seconds = 0.3;
const HORN_RELEASE: Seconds = 0.2;
/** A blind switch: silence is there after so long, in it the branch changes, and so long after its beginning the sound comes back. */
const PAUSE: { change: Seconds; back: Seconds } = { change: 0.05, back: 0.12 };

/**
 * Where the sounds are heard through the mounts. Loops go into one bus; every mount is a branch that always runs
 * behind it; one branch is heard. Every change of a gain is a fade of 25 ms or a slower ramp.
 *
 *     sound ───┐       ┌─ branch 0 ─┐       noise ─┐
 *     horn ────┴─ bus ─┼─ branch 1 ─┼─ pause ─ bench ─ gate ─┬─ volume ─ output
 *                      └─ …        ─┘              ear check ─┘
 */
export class ListeningRoom {
  readonly sampleRate: Hertz;
  /** Called when the context starts, stops, is taken away or closes. */
  onStateChange?: (state: RoomState) => void;

  readonly #context: SoundContext;
  readonly #branches: Branch[];
  readonly #heard: Selector;
  readonly #sound: LoopedSource;
  readonly #horn: LoopedSource;
  readonly #noise: LoopedSource;
  readonly #noiseLevel: SmoothGain;
  readonly #pause: SmoothGain;
  readonly #bench: SmoothGain;
  readonly #gate: SmoothGain;
  readonly #volume: SmoothGain;
  readonly #timeout: Seconds;
  #hornSound: { samples: Float32Array; loopFrom: number } = { samples: new Float32Array(0), loopFrom: 0 };
  #blowing = false;
  #playing = false;
  #silenced = false;
  #hasEntered = false;

  /** Builds the graph on a live or an offline context, into `output`; the page uses `open`. */
  constructor(
    context: SoundContext,
    branches: number,
    {
      timeout = PATIENCE,
      output = context.destination
    }: { timeout?: Seconds; output?: IAudioNode<SoundContext> } = {}
  ) {
    this.#context = context;
    this.#timeout = timeout;
    this.sampleRate = context.sampleRate;
    const bus: IGainNode<SoundContext> = new GainNode(context, {
      channelCount: 1,
      channelCountMode: 'explicit'
    });
    // Keeps every branch running, whatever the sources do, so that no filter ever starts with an empty history.
    const keeper = new ConstantSourceNode<SoundContext>(context, { offset: 0 });
    keeper.connect(bus);
    keeper.start();

    this.#sound = new LoopedSource(context, bus);
    this.#horn = new LoopedSource(context, bus);

    this.#pause = new SmoothGain(context, 1);
    this.#bench = new SmoothGain(context, 1);
    this.#noiseLevel = new SmoothGain(context, 0);
    this.#noiseLevel.node.connect(this.#bench.node);
    this.#noise = new LoopedSource(context, this.#noiseLevel.node);
    this.#gate = new SmoothGain(context, 0);
    this.#volume = new SmoothGain(context, 1);
    this.#heard = new Selector(context, branches);
    this.#branches = this.#heard.gains.map((gain) => {
      gain.connect(this.#pause.node);
      return new Branch(context, bus, gain);
    });
    this.#pause.node
      .connect(this.#bench.node)
      .connect(this.#gate.node)
      .connect(this.#volume.node)
      .connect(output);
    context.onstatechange = () => {
      for (const branch of this.#branches) branch.settle();
      this.onStateChange?.(this.state);
    };
  }

  /**
   * Opens the sound, at 48 kHz where the machine allows it. To be called from a click or a key.
   * Rejects with `SoundUnavailable` where there is no Web Audio or no device, or when the context is still not
   * running after `timeout` (3 s).
   */
  static async open({
    sampleRate = USUAL_RATE,
    branches = PREFERRED_BRANCHES,
    timeout = PATIENCE
  }: { sampleRate?: Hertz; branches?: number; timeout?: Seconds } = {}): Promise<ListeningRoom> {
    return new ListeningRoom(await openContext(sampleRate, timeout), branches, { timeout });
  }

  get state(): RoomState {
    return this.#context.state as RoomState;
  }

  get playing(): boolean {
    return this.#playing;
  }

  /** Exchange a branch's impulse response, without a click, as often as one likes: the newest wins. */
  setBranch(index: number, impulseResponse: Float32Array): void {
    this.#branch(index).load(impulseResponse);
  }

  /** Hear this branch instead of the one heard: a 25 ms equal-gain fade, also in the middle of another one. */
  hear(index: number): void {
    this.#branch(index);
    this.#heard.choose(index);
  }

  /**
   * Hear this branch across a moment of silence that is the same whatever is heard before and after it, the same branch again among
   * others: a fade from one to the other would tell by its dip whether they are alike.
   */
  hearAcrossPause(index: number): void {
    this.#branch(index);
    const { now } = this;
    this.#pause.step(0, now);
    this.#heard.choose(index, now + PAUSE.change);
    this.#pause.step(1, now + PAUSE.back);
  }

  /** Mute at once, or end the muting. */
  silence(on: boolean): void {
    this.#silenced = on;
    this.#openOrShut();
  }

  /** The clock by which sounds are scheduled. */
  get now(): Seconds {
    return this.#context.currentTime;
  }

  /**
   * Fade from the loop that plays to this one. Different loops are uncorrelated: equal power by default. `loopFrom`
   * and `at` as in `Loading`: what leads into a loop, and when it is due by `now`.
   */
  setSound(
    samples: Float32Array,
    options: { fade?: Seconds; equalPower?: boolean; loopFrom?: number; at?: Seconds } = {}
  ): void {
    const { fade = EXCHANGE, equalPower = true, loopFrom, at } = options;
    this.#sound.load(samples, { fade, law: equalPower ? 'equalPower' : 'equalGain', loopFrom, at });
  }

  /** The noise of a place: behind the sound, not through the mounts. */
  setNoise(samples: Float32Array): void {
    this.#noise.load(samples, { fade: EXCHANGE, law: 'equalPower' });
  }

  /** How loud it is beside what the mounts play. */
  setNoiseLevel(gain: number): void {
    this.#noiseLevel.approach(gain, EXCHANGE);
  }

  /** What `blow` plays: once up to `loopFrom`, then round from there. */
  setHorn(samples: Float32Array, loopFrom = 0): void {
    this.#hornSound = { samples, loopFrom };
    if (this.#blowing) this.#speak();
  }

  /** Pull the horn's cord, or let it go: it speaks at once and dies away within 200 ms. */
  blow(on: boolean): void {
    if (on === this.#blowing) return;
    this.#blowing = on;
    if (on) this.#speak();
    else this.#horn.load(new Float32Array(0), { fade: HORN_RELEASE, law: 'equalGain' });
  }

  #speak(): void {
    const { samples, loopFrom } = this.#hornSound;
    this.#horn.load(samples, { fade: 0, law: 'equalGain', loopFrom });
  }

  /** The gain that keeps the loudest mount from clipping, reached within `ramp`. */
  setBenchGain(gain: number, ramp: Seconds = BENCH): void {
    if (ramp <= FADE) this.#bench.step(gain);
    else this.#bench.approach(gain, ramp - FADE);
  }

  /** The user's volume as a factor. */
  setVolume(gain: number): void {
    this.#volume.step(gain);
  }

  /** Let the sound flow. Rejects with `SoundUnavailable` if the context cannot be woken. */
  async play(): Promise<void> {
    this.#playing = true;
    try {
      await this.#wake();
    } catch (error) {
      this.#playing = false;
      throw error;
    }
    this.#openOrShut();
  }

  stop(): void {
    this.#playing = false;
    this.#openOrShut();
  }

  /** A quiet tone in the bass and one in the treble, not through the mounts; resolves when they are over. */
  async earCheck(): Promise<void> {
    await this.#wake();
    await playEarCheck(this.#context, this.#volume.node);
  }

  async close(): Promise<void> {
    this.#playing = false;
    for (const branch of this.#branches) branch.close();
    if ('close' in this.#context && this.state !== 'closed') await this.#context.close();
  }

  #openOrShut(): void {
    const open = this.#playing && !this.#silenced;
    // Begun a moment from now, so that a busy machine that delivers it late does not cut off its beginning.
    if (open && !this.#hasEntered) this.#gate.approach(1, ENTRANCE, begunBy(this.#context) / this.sampleRate);
    else this.#gate.step(open ? 1 : 0);
    this.#hasEntered ||= open;
  }

  async #wake(): Promise<void> {
    if ('resume' in this.#context && !isFlowing(this.#context))
      await wake(this.#context as IAudioContext, this.#timeout);
  }

  #branch(index: number): Branch {
    const branch = this.#branches[index];
    if (!branch) throw new RangeError(`branch must be within 0 … ${this.#branches.length - 1}, got ${index}`);
    return branch;
  }
}
