import { refusal } from '../../acoustics/refusal.js';
import { sensitivity } from '../../acoustics/speaker/sensitivity.js';
import { drawerOf, setupOfCandidate } from '../../evaluation/fit/drawer.js';
import { triedSound, type TriedSound } from '../../evaluation/fit/measures.js';
import { ranked, type MeasureName, type Ranked } from '../../evaluation/fit/ranking.js';
import { soundsOf } from '../../evaluation/fit/tried-with.js';
import { drivenAnswer } from '../../evaluation/answer.js';
import { answerOf, FIELD_MODEL } from '../../evaluation/models.js';
import { filterFor } from '../../evaluation/stand.js';
import type { BenchModel } from '../../file/bench-file.js';
import { DEMO_MODELS } from '../../file/demo-vehicles.js';
import { checkVehicle } from '../../fitting/vehicle.js';
import { sentence } from '../../format/sentence.js';
import type { GeneratedSound } from '../../sounds/kinds.js';
import type { Decibels } from '../../units.js';
import type { Bench } from '../bench.svelte.js';
import { FitRun, type FitLine, type FitParts } from './fit-run.svelte.js';
import { figuresNow, whatMatters, type Figures, type Matter } from './what-matters.js';

/** What plays a mount that is not on the shelf. */
export interface FitEar {
  soundToTry(sound: GeneratedSound): Promise<{
    figures: Pick<TriedSound, 'power' | 'binWidth'>;
    strain: TriedSound['strain'];
  }>;
  readonly playing: boolean;
  play(): Promise<void>;
  stop(): void;
  try(sound: GeneratedSound | null): void;
  tryMount(filter: Float32Array | null): void;
  peakBehind(sound: GeneratedSound, filter: Float32Array): Promise<{ peak: number; gain: number }>;
}

/** Peak that a tried mount may have at the device, and the most by which one is brought down to the softest. */
const SAFE_PEAK = 0.85;
const MOST_LEVELLING: Decibels = 30;

/** The bench on which a model is fitted out: the model in hand, what was tried in it, and what of that is heard. */
export class FitBench {
  by = $state<MeasureName>('level');
  /** Heard as loud as the softest of them, or as loud as they are. */
  equal = $state(false);
  run = $state.raw<FitRun | null>(null);
  /** The line that is heard. */
  heard = $state<string | null>(null);
  /** One sentence where a line could not be heard. */
  problem = $state<string | null>(null);
  /** The line of which is told how much small changes matter, what it is now, and what each does. */
  matters = $state.raw<{
    key: string;
    now: Figures | null;
    found: readonly Matter[];
    done: boolean;
  } | null>(null);
  /** Keys of the speakers that are left out. */
  left = $state.raw<readonly string[]>([]);

  #bench: Bench;
  #parts: FitParts;
  #ear: FitEar;
  /** By how much all are turned down, so that the loudest that was heard had room: it never goes up while one compares. */
  #room = 1;
  #began: { playing: boolean } | null = null;
  #asking: AbortController | null = null;
  #hearing = 0;

  constructor(bench: Bench, waves: FitParts['waves'], ear: FitEar) {
    this.#bench = bench;
    this.#ear = ear;
    const sound: FitParts['sound'] = async (one) => {
      const { figures, strain } = await ear.soundToTry(one);
      return triedSound(figures, bench.sampleRate, strain);
    };
    this.#parts = { waves, sound };
  }

  /** The model in hand: the bench's, or the first of the drawer until one is changed. */
  readonly model: BenchModel = $derived.by(() => this.#bench.file.model ?? DEMO_MODELS[0]);

  /** One sentence where such a model cannot be. */
  readonly impossible: string | null = $derived.by(() => refusal(() => checkVehicle(this.model)));

  readonly drawer = $derived.by(() => drawerOf(this.#bench.file));

  readonly ranking: readonly Ranked<FitLine>[] = $derived.by(() => ranked(this.run?.lines ?? [], this.by));

  /** Whether what was tried is not what is there now. */
  readonly stale: boolean = $derived.by(() => {
    const tried = this.run?.file;
    if (!tried) return false;
    const { air, listener, drive, amplifier, lift, sound } = this.#bench.file;
    const own = this.model.sounds.length > 0;
    return (
      tried.model !== this.model ||
      tried.air !== air ||
      tried.listener !== listener ||
      tried.drive !== drive ||
      tried.amplifier !== amplifier ||
      tried.lift !== lift ||
      (!own && tried.sound !== sound) ||
      // A line that is put on the shelf takes its speaker there: the same as before.
      JSON.stringify(drawerOf(tried)) !== JSON.stringify(this.drawer)
    );
  });

  setModel(part: Partial<BenchModel>, kind: string | null = null): void {
    const model = { ...this.model, ...part };
    for (const key of ['cab', 'chassis', 'roof', 'floor'] as const)
      if (model[key] === undefined) delete model[key];
    this.#bench.setVehicle(model, kind && `model ${kind}`);
  }

  leaveOut(key: string, out: boolean): void {
    this.left = out ? [...this.left, key] : this.left.filter((one) => one !== key);
  }

  /** The sounds on which lines were measured; the first of them is what one hears them on. */
  readonly measuredOn: readonly string[] = $derived.by(() =>
    this.run ? soundsOf(this.run.file, this.run.file.model!).map(({ name }) => name) : []
  );

  /** Tries everything that fits; what is known already is not solved again. */
  async start(): Promise<void> {
    if (this.impossible) return;
    this.leave();
    const only = Object.keys(this.drawer).filter((key) => !this.left.includes(key));
    const file = { ...this.#bench.file, model: this.model };
    const run = new FitRun(file, only, this.#bench.sampleRate, () => this.by, this.#parts);
    this.run = run;
    await run.start();
  }

  stop(): void {
    this.run?.stop();
  }

  /** Sizes that fit and were not tried: round those in front by the measure that is asked for by now, and all of them. */
  readonly between = $derived.by(() => {
    const { run } = this;
    if (!run || run.running || this.stale) return null;
    return { front: run.hasBetween(this.by), all: run.untried };
  });

  /** Tries of them those round what is in front, or all. */
  async goOn(all: boolean): Promise<void> {
    await this.run?.goOn(all);
  }

  /** Hears a line in the place of the heard mount. Call from a click. */
  async hear(line: FitLine): Promise<void> {
    const run = this.run;
    if (!run) return;
    const turn = ++this.#hearing;
    this.problem = null;
    this.heard = line.key;
    this.#began ??= { playing: this.#ear.playing };
    try {
      const [sound] = soundsOf(run.file, run.file.model!);
      const own = answerOf(FIELD_MODEL, line.question, line.known);
      const answer = drivenAnswer(own, { drive: 1, lift: run.file.lift ?? null });
      const filter = filterFor(answer, this.#bench.sampleRate);
      const begun = this.#ear.playing ? null : this.#ear.play();
      this.#ear.try(sound);
      const { peak, gain } = await this.#ear.peakBehind(sound, filter);
      await begun;
      if (turn !== this.#hearing) return;
      const drive = this.#driveOf(line);
      if (gain > 0) this.#room = Math.min(this.#room, SAFE_PEAK / Math.max(1e-9, peak * drive * gain));
      const factor = drive * this.#room * (this.equal ? this.#levelling(line) : 1);
      this.#ear.tryMount(filter.map((sample) => sample * factor));
    } catch (error) {
      if (turn === this.#hearing) this.problem = sentence(error);
    }
  }

  /** How sensitive its speaker is beside the most sensitive one on the shelf: the others play so, too (branches.svelte.ts). */
  #driveOf({ speaker }: FitLine): number {
    const { stands, file } = this.#bench;
    const most = Math.max(...stands.map(({ installation }) => sensitivity(installation.speaker, file.air)));
    return sensitivity(speaker, file.air) / most;
  }

  /** What brings a line down to the softest of all. */
  #levelling({ measures }: FitLine): number {
    const softest = Math.min(
      ...this.ranking.map(({ line }) => line.measures.levelDb).filter(Number.isFinite)
    );
    return 10 ** (-Math.min(MOST_LEVELLING, Math.max(0, measures.levelDb - softest)) / 20);
  }

  /** The shelf is heard again. */
  silence(): void {
    this.#hearing++;
    this.heard = null;
    this.#ear.tryMount(null);
    this.#ear.try(null);
    if (this.#began && !this.#began.playing) this.#ear.stop();
    this.#began = null;
  }

  /** Puts a line on the shelf: one step to undo. */
  putOnShelf({ candidate, speaker }: FitLine): string | null {
    return this.#bench.add(setupOfCandidate(candidate), speaker);
  }

  /** Whether the shelf has such a mount. */
  isOnShelf({ candidate }: FitLine): boolean {
    const { name, speaker } = setupOfCandidate(candidate);
    return this.#bench.file.setups.some((setup) => setup.name === name && setup.speaker === speaker);
  }

  /** Tells how much small changes matter to a line, or no more. */
  async ask(line: FitLine): Promise<void> {
    const again = this.matters?.key === line.key;
    this.#forgetMatters();
    const { run } = this;
    if (again || !run) return;
    const asking = (this.#asking = new AbortController());
    const { signal } = asking;
    this.matters = { key: line.key, now: null, found: [], done: false };
    const tell = (part: Partial<NonNullable<FitBench['matters']>>): void => {
      if (!signal.aborted && this.matters) this.matters = { ...this.matters, ...part };
    };
    try {
      const [tried, { waves }] = [await run.triedWith(), this.#parts];
      tell({ now: await figuresNow(line, tried, waves, signal) });
      await whatMatters(line, tried, waves, signal, (matter) =>
        tell({ found: [...this.matters!.found, matter] })
      );
      tell({ done: true });
    } catch (error) {
      if (signal.aborted) return;
      this.matters = null;
      this.problem = sentence(error);
    }
  }

  /** Leaves the bench: nothing of it goes on. */
  leave(): void {
    this.stop();
    this.silence();
    this.#forgetMatters();
  }

  #forgetMatters(): void {
    this.#asking?.abort();
    this.matters = null;
  }
}
