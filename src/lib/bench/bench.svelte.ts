import type { Second } from '../acoustics/mounts/second.js';
import {
  checkInstallation,
  checkSpeaker,
  LIMITS,
  checkWithin
} from '../acoustics/mounts/check-installation.js';
import { type Listener, type Place, PLACES } from '../acoustics/listener.js';
import type { Mount } from '../acoustics/mounts/mount.js';
import type { Speaker } from '../acoustics/speaker/speaker.js';
import type { DegreesCelsius, Hertz, Metres, Seconds } from '../units.js';
import { USUAL_RATE } from '../sounds/blocks/sample-rate.js';
import { checkSound } from '../sounds/check-sound.js';
import type { GeneratedSound } from '../sounds/kinds.js';
import type { BenchFile, BenchModel, BenchSound, BenchView, ModelName, Setup } from '../file/bench-file.js';
import { BENCH_FILE_LIMITS } from '../file/bench-file-limits.js';
import { demoBench } from '../file/demo-bench.js';
import { installationOf } from '../file/installation-of.js';
import { History } from './history.js';
import type { Board } from '../acoustics/mounts/board.js';
import { everyKnob, type KnobKey } from '../acoustics/mounts/every-knob.js';
import type { Knob } from '../acoustics/mounts/size-knobs.js';
import { refusal } from '../acoustics/refusal.js';
import { knobSize, turnedPart } from './turned-knob.js';
import { withMoved, withoutSetup, withSetup } from './setups.js';
import { modelAt, whereItListens } from '../evaluation/models.js';
import { measuredAgainst } from '../evaluation/same-drive.js';
import { Stands } from '../evaluation/stands.js';
import type { WaveAnswers } from '../evaluation/wave-answers.svelte.js';
import type { Stand } from '../evaluation/stand.js';
import { inShownUnits } from '../format/in-shown-units.js';
import { lengthWords } from '../format/length-words.js';

/** How many mounts stand on the shelf at most: as many as there are numerals, colours and line patterns. */
export const MAX_SETUPS = 6;

/** What the copy of a mount is called behind its name. */
const AGAIN = ' again';

/**
 * What the user works on. The whole of it is one plain value, the bench file, replaced and never mutated, with its
 * history; everything shown is derived from it. Commands that can be refused return one sentence, and then
 * nothing has changed.
 */
export class Bench {
  #history: History<BenchFile>;
  /** The work with its way back, while something else is shown in its place. */
  #waiting = $state.raw<History<BenchFile> | null>(null);
  /** From where one listened in each place before one left it. */
  #listened: Partial<Record<Place, Listener>> = {};
  #file: BenchFile = $state.raw(demoBench());
  #canUndo = $state(false);
  #canRedo = $state(false);
  #dragTime: Seconds | null = null;
  #stands: Stands;

  /** Rate of the audio device's context; filters and sounds are made for it. */
  sampleRate = $state<Hertz>(USUAL_RATE);
  /** The knob that is in hand: the rule lies along it and the arrow keys turn it. */
  inHand = $state<KnobKey | null>(null);
  /** While a size is dragged or grown, the headroom stays where it is. */
  dragging = $state(false);

  readonly stands: Stand[] = $derived.by(() => this.#stands.of(this.#file, this.listener, this.sampleRate));
  readonly heard: Stand = $derived(this.stands[this.#file.view.heard]);
  /** The mount that levels are written against: where it cannot be built, the first one that can. */
  readonly measuredAgainst: Stand = $derived.by(() => measuredAgainst(this.stands, this.#file.view));
  readonly knobs: Knob<KnobKey>[] = $derived(everyKnob(this.heard.installation));

  /** What is mounted, in the order of the shelf. */
  readonly mounts: Mount[] = $derived.by(() => this.#file.setups.map(({ mount }) => mount));
  /** The model that draws and plays: the chosen one, unless it knows nothing of the board that one listens over, or of openings. */
  readonly model: ModelName = $derived.by(() =>
    modelAt(this.#file.view.model, this.#file.listener, this.mounts)
  );
  /** Where the models listen: the rule of thumb knows straight in front alone. */
  readonly listener: Listener = $derived.by(() => whereItListens(this.model, this.#file.listener));

  /** From where one would listen in the other place: the hand, or the layout. */
  readonly elsewhere: Listener = $derived.by(() => {
    const other: Place = this.#file.listener.board ? 'hand' : 'layout';
    return this.#listened[other] ?? PLACES[other];
  });

  /** `waves` holds what is known of the wave solution; without it the rule of thumb stands in. */
  constructor(file: BenchFile = demoBench(), waves: Pick<WaveAnswers, 'best' | 'refusal'> | null = null) {
    this.#history = new History(file);
    this.#file = file;
    this.#stands = new Stands(waves);
  }

  get file(): BenchFile {
    return this.#file;
  }

  /** What is worked on and kept, whatever is shown in its place for a while. */
  get work(): BenchFile {
    return this.#waiting?.present ?? this.#file;
  }

  get performing(): boolean {
    return this.#waiting !== null;
  }

  get canUndo(): boolean {
    return this.#canUndo;
  }

  get canRedo(): boolean {
    return this.#canRedo;
  }

  /** Lengths as the user wants them written: millimetres or inches. */
  length(metres: Metres): string {
    return lengthWords(metres, this.#file.view.inches);
  }

  /** A sentence about sizes, which tells them in millimetres, with its lengths as the user wants them written. */
  sentence(aboutSizes: string): string {
    return inShownUnits(aboutSizes, this.#file.view.inches);
  }

  undo(): void {
    this.#history.undo();
    this.#show();
  }

  redo(): void {
    this.#history.redo();
    this.#show();
  }

  /**
   * Shows another bench in the place of the work, until `rest`. Whatever is done to it meanwhile is done to what is shown alone, and goes
   * with it.
   */
  perform(file: BenchFile): void {
    this.#waiting ??= this.#history;
    this.inHand = null;
    this.#history = new History(file);
    this.#show();
  }

  /** Brings back the work as it was left, with its way back. */
  rest(): void {
    if (!this.#waiting) return;
    this.inHand = null;
    this.#history = this.#waiting;
    this.#waiting = null;
    this.#show();
  }

  /** Puts another bench in the place of this one, which stays one step back. */
  open(file: BenchFile): string | null {
    if (file.setups.length > MAX_SETUPS) return tooMany(file);
    this.rest();
    this.inHand = null;
    this.#listened = {};
    this.#change(file, null);
    return null;
  }

  /** Starts with this bench instead of the one the page came with: where one begins is no step back. */
  restore(file: BenchFile): string | null {
    if (file.setups.length > MAX_SETUPS) return tooMany(file);
    this.inHand = null;
    this.#waiting = null;
    this.#history = new History(file);
    this.#show();
    return null;
  }

  hear(index: number): void {
    if (index < 0 || index >= this.#file.setups.length || index === this.#file.view.heard) return;
    this.inHand = null;
    // Listening is not work: it makes no step in the history.
    this.#history.amend({ ...this.#file, view: { ...this.#file.view, heard: index } });
    this.#show();
  }

  /** Hears the next or the previous mount, round the ends. */
  step(by: 1 | -1): void {
    const count = this.#file.setups.length;
    this.hear((this.#file.view.heard + by + count) % count);
  }

  measureAgainst(index: number): void {
    this.#change({ ...this.#file, view: { ...this.#file.view, measuredAgainst: index } }, null);
  }

  setInches(inches: boolean): void {
    this.#change({ ...this.#file, view: { ...this.#file.view, inches } }, 'inches');
  }

  /** Writes the levels of the response picture in dB re 20 µPa where one listens, or against 0 dB. */
  setRealLevel(realLevel: boolean): void {
    const view: BenchView = { ...this.#file.view, realLevel };
    if (!realLevel) delete view.realLevel;
    this.#change({ ...this.#file, view }, 'real level');
  }

  setSameLoudness(sameLoudness: boolean): void {
    this.#change({ ...this.#file, view: { ...this.#file.view, sameLoudness } }, 'same loudness');
  }

  /** Puts another sound on the bench. Changes of one `kind` that follow each other closely are one step to undo. */
  setSound(sound: BenchSound, kind: string | null = null): void {
    this.#change({ ...this.#file, sound }, kind);
  }

  /** Turns one knob of the generated sound. */
  turnSound(key: string, value: unknown): string | null {
    const { sound } = this.#file;
    if (sound.kind === 'recording') return null;
    const turned = { ...sound, [key]: value } as GeneratedSound;
    return refusal(() => {
      checkSound(turned);
      this.#change({ ...this.#file, sound: turned }, `sound ${key}`);
    });
  }

  /** Draws and plays all mounts by this model. */
  setModel(model: ModelName): void {
    if (model !== this.#file.view.model)
      this.#change({ ...this.#file, view: { ...this.#file.view, model } }, 'model');
  }

  /** Moves the listener. */
  setListener(part: Partial<Listener>): string | null {
    const listener = { ...this.#file.listener, ...part };
    if (listener.distance === undefined) delete listener.distance;
    if (!listener.board) delete listener.board;
    return refusal(() => {
      const limits = listener.board ? LIMITS.angleOverBoardDeg : LIMITS.angleDeg;
      checkWithin('angle', listener.angleDeg, limits, 'degrees');
      if (listener.distance !== undefined) checkWithin('distance', listener.distance, LIMITS.distance, 'm');
      this.#change({ ...this.#file, listener }, 'listener');
    });
  }

  /** Listens in the hand or on the layout, from where one listened there the last time. */
  listenOn(place: Place): void {
    const { listener } = this.#file;
    const now: Place = listener.board ? 'layout' : 'hand';
    if (now === place) return;
    const { elsewhere } = this;
    this.#listened[now] = listener;
    this.#change({ ...this.#file, listener: elsewhere }, null);
  }

  setTemperature(temperatureC: DegreesCelsius): string | null {
    return refusal(() => {
      checkWithin('air temperature', temperatureC, LIMITS.temperatureC, '°C');
      this.#change({ ...this.#file, air: { temperatureC } }, 'air');
    });
  }

  /** Turns one knob of the heard mount. */
  turnKnob(key: KnobKey, value: number): string | null {
    const knob = this.knobs.find((candidate) => candidate.key === key);
    if (!knob) return null;
    const size = knobSize(knob, value, this.#file.view.inches);
    if (typeof size === 'string') return size;
    return this.#changeHeard(turnedPart(this.heard.setup, key, size), `knob ${key}`);
  }

  /** Turns a knob as far as it goes: for drags and steps, which stop at the ends. */
  pushKnob(key: KnobKey, value: number): void {
    const knob = this.knobs.find((candidate) => candidate.key === key);
    if (knob) this.turnKnob(key, Math.min(knob.max, Math.max(knob.min, value)));
  }

  /** Replaces the heard mount. */
  setMount(mount: Mount, kind: string | null = null): string | null {
    return this.#changeHeard({ mount }, kind);
  }

  /** Lays the heard mount's speaker along or across. */
  setTurn(turn: 0 | 90): string | null {
    return this.#changeHeard({ turn }, null);
  }

  /** Turns the heard mount over on the layout: at the height it has, or where it cannot stand so at the usual one. */
  setFacing(facing: Board['facing']): string | null {
    return this.#changeHeard({ facing }, null) && this.#changeHeard({ facing, above: undefined }, null);
  }

  /** Puts a second speaker into the heard mount, moves it or wires it; null takes it out. */
  setSecond(second: Second | null): string | null {
    return this.#changeHeard({ second: second ?? undefined }, null);
  }

  rename(name: string): string | null {
    const trimmed = name.trim().slice(0, BENCH_FILE_LIMITS.name);
    if (trimmed === '') return 'a mount needs a name';
    return this.#changeHeard({ name: trimmed }, 'name');
  }

  setNotes(notes: string): void {
    this.#changeHeard({ notes }, 'notes');
  }

  /** Puts one more mount on the shelf and hears it, with the speaker that it has where the bench lacks it. */
  add(setup: Setup, speaker: Speaker | null = null): string | null {
    const { speakers, setups } = this.#file;
    const kept = speaker ? { [setup.speaker]: speaker, ...speakers } : speakers;
    return this.#put(withSetup({ ...this.#file, speakers: kept }, setup, setups.length));
  }

  /** The model that a speaker is wanted for, possible or not. */
  setVehicle(model: BenchModel, kind: string | null = null): void {
    this.#change({ ...this.#file, model }, kind);
  }

  /** Puts a copy of the heard mount beside it and hears the copy. */
  duplicate(): string | null {
    const { setup, index } = this.heard;
    const name = `${setup.name.slice(0, BENCH_FILE_LIMITS.name - AGAIN.length)}${AGAIN}`;
    return this.#put(withSetup(this.#file, { ...setup, name }, index + 1));
  }

  /** Takes the heard mount off the shelf. */
  remove(): string | null {
    if (this.#file.setups.length === 1) return 'the last mount stays on the shelf';
    return this.#put(withoutSetup(this.#file, this.heard.index));
  }

  /** Moves the heard mount one place along the shelf. */
  move(by: 1 | -1): void {
    const to = this.heard.index + by;
    if (to >= 0 && to < this.#file.setups.length)
      this.#change(withMoved(this.#file, this.heard.index, to), null);
  }

  /**
   * Gives the heard mount, or all of them, this speaker; whatever else has the speaker of this key gets its new
   * values too. A mount that it does not fit keeps its sizes and says so on its stand.
   */
  setSpeaker(key: string, speaker: Speaker, everywhere: boolean, kind: string | null = null): string | null {
    return refusal(() => {
      checkSpeaker(speaker);
      const { view, setups, speakers } = this.#file;
      this.#change(
        {
          ...this.#file,
          speakers: { ...speakers, [key]: speaker },
          setups: setups.map((setup, i) =>
            everywhere || i === view.heard ? { ...setup, speaker: key } : setup
          )
        },
        kind
      );
    });
  }

  /**
   * Changes the bench by a function that may refuse: the speakers it keeps (speakers.ts), what things cost (prices.ts), how it is driven
   * and where it will run (circumstances.ts). What gives the same bench back makes no step.
   */
  revise(change: (file: BenchFile) => BenchFile, kind: string | null = null): string | null {
    return refusal(() => {
      const file = change(this.#file);
      if (file !== this.#file) this.#change(file, kind);
    });
  }

  /** Changes what is kept of blind trials and hall votes. A run or a round is one step back, from its beginning on. */
  keepResults(change: (file: BenchFile) => BenchFile, { begins = false }: { begins?: boolean } = {}): void {
    const file = change(this.#file);
    if (file === this.#file) return;
    if (begins) this.#change(file, null);
    else this.#history.amend(file);
    this.#show();
  }

  #put(file: BenchFile): string | null {
    if (file.setups.length > MAX_SETUPS) return `the shelf has room for ${MAX_SETUPS} mounts`;
    this.inHand = null;
    this.#change(file, null);
    return null;
  }

  #changeHeard(part: Partial<Setup>, kind: string | null): string | null {
    const { heard } = this.#file.view;
    const setup = { ...this.#file.setups[heard], ...part };
    const refused = refusal(() => {
      // What cannot be built as it stands may be changed step by step until it can.
      const isBuilt = ['mount', 'turn', 'above', 'facing', 'second'].some((key) => key in part);
      if (isBuilt && !this.heard.problem) checkInstallation(installationOf(this.#file, setup, 'ideal'));
      const setups = this.#file.setups.with(heard, setup);
      this.#change({ ...this.#file, setups }, kind && `${kind} ${heard}`);
    });
    return refused && this.sentence(refused);
  }

  #change(file: BenchFile, kind: string | null): void {
    const now = performance.now() / 1000;
    // However long a drag lingers, it is one step: its clock stands still.
    this.#dragTime = this.dragging ? (this.#dragTime ?? now) : null;
    this.#history.change(file, kind, this.#dragTime ?? now);
    this.#show();
  }

  #show(): void {
    this.#file = this.#history.present;
    this.#canUndo = this.#history.canUndo;
    this.#canRedo = this.#history.canRedo;
  }
}

function tooMany({ setups }: BenchFile): string {
  return `this bench holds ${setups.length} mounts; the shelf has room for ${MAX_SETUPS}`;
}
