import { checkInstallation } from '../acoustics/check-installation.js';
import type { Installation } from '../acoustics/installation.js';
import type { Mount } from '../acoustics/mount.js';
import type { Speaker } from '../acoustics/speaker.js';
import type { Hertz, Metres } from '../units.js';
import type { BenchFile, Setup } from './file/bench-file.js';
import { demoBench } from './file/demo-bench.js';
import { installationOf } from './file/installation-of.js';
import { knobsOf, withKnob, type Knob } from './knobs.js';
import { millimetres } from './words/millimetres.js';
import { compute, type Computed } from './stand.js';

/** One setup as it stands on the shelf: what it is, and what was computed of it or why it cannot be. */
export interface Stand {
  index: number;
  /** The numeral on its disc and the key that hears it. */
  numeral: string;
  setup: Setup;
  installation: Installation;
  computed: Computed | null;
  /** One sentence where the mount cannot be built. */
  problem: string | null;
}

/**
 * What the user works on. The whole of it is one plain value, the bench file, replaced and never mutated;
 * everything shown is derived from it.
 */
export class Bench {
  #file = $state.raw<BenchFile>(demoBench());
  #computed = new WeakMap<Setup, { inputs: unknown[]; stand: Stand }>();

  /** Rate of the audio device's context; filters and sounds are made for it. */
  sampleRate = $state<Hertz>(48000);
  /** The knob that is in hand: the rule lies along it and the arrow keys turn it. */
  inHand = $state<Knob['key'] | null>(null);
  /** While a size is dragged or grown, the headroom stays where it is. */
  dragging = $state(false);

  readonly stands: Stand[] = $derived.by(() => this.#file.setups.map((_, index) => this.#stand(index)));
  readonly heard: Stand = $derived(this.stands[this.#file.view.heard]);
  /** The mount that levels are written against: where it cannot be built, the first one that can. */
  readonly measuredAgainst: Stand = $derived.by(() => {
    const named = this.stands[this.#file.view.measuredAgainst];
    return named.problem ? (this.stands.find(({ problem }) => !problem) ?? named) : named;
  });
  readonly knobs: Knob[] = $derived(this.heard.problem ? [] : knobsOf(this.heard.installation));

  get file(): BenchFile {
    return this.#file;
  }

  /** The bench's one speaker: all its mounts carry the speaker of the first. */
  get speakerKey(): string {
    return this.#file.setups[0].speaker;
  }

  get speaker(): Speaker {
    return this.heard.installation.speaker;
  }

  hear(index: number): void {
    if (index < 0 || index >= this.#file.setups.length || index === this.#file.view.heard) return;
    this.inHand = null;
    this.#file = { ...this.#file, view: { ...this.#file.view, heard: index } };
  }

  /** Hears the next or the previous mount, round the ends. */
  step(by: 1 | -1): void {
    const count = this.#file.setups.length;
    this.hear((this.#file.view.heard + by + count) % count);
  }

  measureAgainst(index: number): void {
    this.#file = { ...this.#file, view: { ...this.#file.view, measuredAgainst: index } };
  }

  setSound(sound: BenchFile['sound']): void {
    this.#file = { ...this.#file, sound };
  }

  /** Turns one knob of the heard mount. Returns a sentence where the size cannot be, and changes nothing then. */
  turnKnob(key: Knob['key'], value: Metres): string | null {
    const knob = this.knobs.find((candidate) => candidate.key === key);
    if (!knob) return null;
    if (!Number.isFinite(value)) return `${knob.label} must be a number of millimetres`;
    if (value < knob.min - 1e-9 || value > knob.max + 1e-9)
      return `${knob.label} must be within ${millimetres(knob.min)} … ${millimetres(knob.max)} mm, got ${millimetres(value)}`;
    return this.setMount(withKnob(this.heard.setup.mount, key, value));
  }

  /** Turns a knob as far as it goes: for drags and steps, which stop at the ends. */
  pushKnob(key: Knob['key'], value: Metres): void {
    const knob = this.knobs.find((candidate) => candidate.key === key);
    if (knob) this.turnKnob(key, Math.min(knob.max, Math.max(knob.min, value)));
  }

  /** Replaces the heard mount. Returns a sentence where it cannot be, and changes nothing then. */
  setMount(mount: Mount): string | null {
    return this.#replaceHeard({ ...this.heard.setup, mount });
  }

  /** Lays the heard mount's speaker along or across. */
  setTurn(turn: 0 | 90): string | null {
    return this.#replaceHeard({ ...this.heard.setup, turn });
  }

  /**
   * Gives all mounts this speaker. A mount that it does not fit keeps its sizes and says so on its stand.
   * Returns a sentence where the speaker itself cannot be, and changes nothing then.
   */
  setSpeaker(key: string, speaker: Speaker): string | null {
    try {
      checkInstallation({ speaker, mount: { kind: 'free' }, turn: 0 });
    } catch (error) {
      if (error instanceof RangeError) return error.message;
      throw error;
    }
    this.#file = {
      ...this.#file,
      speakers: { ...this.#file.speakers, [key]: speaker },
      setups: this.#file.setups.map((setup) => ({ ...setup, speaker: key }))
    };
    return null;
  }

  #replaceHeard(setup: Setup): string | null {
    try {
      checkInstallation(installationOf(this.#file, setup));
    } catch (error) {
      if (error instanceof RangeError) return error.message;
      throw error;
    }
    const setups = this.#file.setups.with(this.#file.view.heard, setup);
    this.#file = { ...this.#file, setups };
    return null;
  }

  /** A setup's stand, computed anew only when something it depends on was replaced. */
  #stand(index: number): Stand {
    const setup = this.#file.setups[index];
    const { air, listener } = this.#file;
    const inputs = [index, this.#file.speakers[setup.speaker], air, listener, this.sampleRate];
    const known = this.#computed.get(setup);
    if (known && known.inputs.every((input, i) => input === inputs[i])) return known.stand;
    const installation = installationOf(this.#file, setup);
    const stand: Stand = {
      index,
      numeral: String(index + 1),
      setup,
      installation,
      computed: null,
      problem: null
    };
    try {
      stand.computed = compute(installation, air, listener, this.sampleRate);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      stand.problem = error.message;
    }
    this.#computed.set(setup, { inputs, stand });
    return stand;
  }
}
