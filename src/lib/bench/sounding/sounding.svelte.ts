import type { Stand } from '../../evaluation/stand.js';
import type { WaveAnswers } from '../../evaluation/wave-answers.svelte.js';
import type { BenchSound } from '../../file/bench-file.js';
import type { GeneratedSound } from '../../sounds/kinds.js';
import type { Decibels } from '../../units.js';
import { LabClient } from '../../workers/sound/client.js';
import { aTaskLater } from '../a-task-later.svelte.js';
import type { Bench } from '../bench.svelte.js';
import type { Elsewhere } from '../elsewhere.svelte.js';
import { audioLater } from './audio-later.js';
import { BenchGain } from './bench-gain.svelte.js';
import { Branches } from './branches.svelte.js';
import { Headroom } from './headroom.js';
import { Hearing } from './hearing.svelte.js';
import { Horn } from './horn.svelte.js';
import { Levels } from './levels.svelte.js';
import { openRecording } from './open-recording.js';
import { MeasuredLoop } from './measured-loop.svelte.js';
import { OwnRecording } from './own-recording.svelte.js';
import { type OpenRoom, Playback, type Room } from './playback.svelte.js';
import { PlayedLoop } from './played-loop.svelte.js';
import { type Loop, SoundCache } from './sound-cache.js';
import { PlaceSound } from './place-sound.svelte.js';
import { type SoundToTry, soundToTry } from './sound-to-try.js';
import { Strains } from './strains.svelte.js';
import { TurnedRanking } from './turned-ranking.svelte.js';

/** What the sound of a bench is made with. */
export interface SoundingParts {
  lab?: Pick<LabClient, 'ask' | 'onDied' | 'close'>;
  openRoom?: OpenRoom;
  openFile?: typeof openRecording;
  /** Has what plays the sound fetched before it is asked for. */
  fetchAudio?: () => Promise<unknown>;
  /** Whether the bench is the one that is to be heard; until then no sound is made of it. */
  ready?: () => boolean;
  /** The mounts in the other place, against which the ranking is told. */
  elsewhere?: Elsewhere | null;
}

/** What stands where a level will be soon. */
const LISTENING = 'listening …';

/** The sound of the bench: keeps the loop, the audio graph and the level figures in step with what is set. */
export class Sounding {
  /** What turns over in the ranking between the hand and the layout. */
  readonly turned: TurnedRanking;
  /** What the sound asks of the heard speaker. */
  readonly strains: Strains;
  /** How loud each mount is. */
  readonly levels: Levels;
  /** Which mount is heard. */
  readonly hearing: Hearing;
  /** What is on the cord. */
  readonly horn: Horn;
  /** The loop with what is measured of it by itself, which is known a little later. */
  readonly measuredLoop: MeasuredLoop;
  /** The user's own recording. */
  readonly ownRecording: OwnRecording;

  #bench: Bench;
  #lab: Pick<LabClient, 'ask' | 'onDied' | 'close'>;
  #cache: SoundCache;
  #playback: Playback;
  #gain: BenchGain;
  #branches: Branches;
  #loop: PlayedLoop;
  #place: PlaceSound;
  #fetchAudio: () => Promise<unknown>;

  constructor(
    bench: Bench,
    waves: Pick<WaveAnswers, 'draft'> | null = null,
    {
      lab = new LabClient(),
      openRoom = async (options) => (await audioLater()).ListeningRoom.open(options),
      openFile = openRecording,
      fetchAudio = audioLater,
      ready = () => true,
      elsewhere = null
    }: SoundingParts = {}
  ) {
    this.#bench = bench;
    this.#lab = lab;
    const cache = (this.#cache = new SoundCache(lab));
    const playback = (this.#playback = new Playback(bench, openRoom));
    const recording = (this.ownRecording = new OwnRecording(bench, openFile));
    const levels = (this.levels = new Levels(lab, playback.tell));
    this.strains = new Strains(lab, playback.tell);
    const gain = (this.#gain = new BenchGain({
      bench,
      waves,
      cache,
      headroom: new Headroom(lab),
      playback,
      besides: () => this.#place.peak
    }));
    this.#place = new PlaceSound({ bench, lab, playback, roomBeside: () => gain.roomBeside });
    const hearing = (this.hearing = new Hearing(bench, playback));
    this.#branches = new Branches({ bench, levels, hearing, gain, playback });
    this.turned = new TurnedRanking({ bench, elsewhere, levels, lab, tell: playback.tell });
    this.measuredLoop = new MeasuredLoop(playback.tell);
    this.horn = new Horn({ bench, cache, playback, gain });
    this.#loop = new PlayedLoop({ bench, recording, cache, gain, playback, ready, gone: () => this.#gone() });
    this.#fetchAudio = fetchAudio;
    lab.onDied = (message) => (playback.problem = message);
  }

  /** What stands where a level will be: it is being measured, or it cannot be. */
  readonly levelPending: string = $derived.by(() => {
    const { sound } = this.#bench.file;
    if (sound.kind === 'recording' && !this.ownRecording.current && !this.ownRecording.opening)
      return 'not measured: its recording is not open';
    return this.problem && !this.loop ? 'not measured' : LISTENING;
  });

  /** The loop once the first levels are told: what they and the first sound do not need comes after them. */
  readonly #told: Loop | null = $derived.by(() => (this.begun ? this.loop : null));

  get loop(): Loop | null {
    return this.#loop.current;
  }

  get playing(): boolean {
    return this.#playback.playing;
  }

  get preparing(): boolean {
    return this.#playback.preparing;
  }

  get silenced(): boolean {
    return this.#playback.silenced;
  }

  get blowing(): boolean {
    return this.horn.blowing;
  }

  /** The user's volume, 0 … 1. */
  get volume(): number {
    return this.#playback.volume;
  }

  set volume(volume: number) {
    this.#playback.volume = volume;
  }

  /** One sentence where the sound could not start or go on. */
  get problem(): string | null {
    return this.#playback.problem;
  }

  set problem(problem: string | null) {
    this.#playback.problem = problem;
  }

  /** Whether what plays of the heard mount is not what is drawn of it: there is no room yet for what its model says. */
  get standsIn(): boolean {
    return this.playing && !this.#gain.hasRoomFor(this.#bench.heard);
  }

  /** Whether the first levels are there, or nothing is to be waited for. */
  get begun(): boolean {
    return this.levels.loudness.length > 0 || this.levelPending !== LISTENING;
  }

  /** Whether what may wait for the first sound may begin: that is there, and no press on play waits. */
  get atLeisure(): boolean {
    return this.begun && !this.preparing;
  }

  /** Whether the levels that are told are not yet those of the sound and the mounts there are. */
  get measuring(): boolean {
    const { file, stands } = this.#bench;
    const known = this.#loop.of === file.sound && this.levels.areOf(this.loop, stands);
    return !known && !this.problem && this.levelPending === LISTENING;
  }

  /** How much louder a stand is than the one measured against, on this sound; null until measured. */
  difference(stand: Stand): Decibels | null {
    return this.levels.difference(stand, this.#bench.measuredAgainst);
  }

  /** Whether the levels of all stands are measured on the sound that plays, and nothing that is heard of them will change by itself. */
  get settled(): boolean {
    return (
      !this.measuring &&
      this.levels.loudness.length > 0 &&
      this.#bench.stands.every((stand) => !stand.awaited && this.#gain.hasRoomFor(stand))
    );
  }

  /** Keeps everything in step. Call while a component starts. */
  connect(): void {
    this.#loop.connect();
    this.horn.connect();
    // Filters are made a task after what they are made from: a key or an answer is shown first.
    const later = aTaskLater(() => ({ stands: this.#bench.stands }));
    this.#branches.connect(() => later.current.stands);
    this.hearing.connect();
    this.levels.connect(() => ({ loop: this.loop, stands: later.current.stands }));
    this.turned.connect(() => this.loop);
    this.measuredLoop.connect(() => this.#told);
    this.#place.connect(() => this.measuredLoop.current);
    this.#gain.connect(() => this.#told);
    this.strains.connect(() => ({
      stand: this.#bench.heard,
      loop: this.loop,
      sampleRate: this.#bench.sampleRate
    }));
    this.#playback.connect();
    $effect(() => {
      // Whoever presses play where it cannot be fetched is told then.
      if (this.loop) this.#fetchAudio().catch(() => undefined);
    });
  }

  /** Starts the sound. Must be called from a click or a key. */
  play(): Promise<void> {
    return this.#playback.play((room) => this.#prepare(room));
  }

  stop(): void {
    this.horn.blow(false);
    this.#playback.stop();
  }

  silence(on: boolean): void {
    this.#playback.silence(on);
  }

  blow(on: boolean): void {
    this.horn.blow(on);
  }

  /** Plays the quiet pair of the ear check. */
  earCheck(): Promise<void> {
    return this.#playback.earCheck();
  }

  /** The sound that is tried now; it is heard in the place of the bench's, and changes nothing of the bench. */
  get tried(): GeneratedSound | null {
    return this.#loop.tried;
  }

  /** Plays a sound to be heard before it is chosen, until another is tried, or none. */
  try(sound: GeneratedSound | null): void {
    this.#loop.tried = sound;
  }

  /** What is measured of a sound, whether it plays or not, and what measures the strain of it behind filters. */
  soundToTry(sound: GeneratedSound): Promise<SoundToTry> {
    return soundToTry(this.#lab, this.#cache.loop(sound, null, this.#bench.sampleRate));
  }

  /** The highest peak of a sound behind a filter, and the gain that the bench plays with. */
  async peakBehind(sound: GeneratedSound, filter: Float32Array): Promise<{ peak: number; gain: number }> {
    return { peak: await (await this.soundToTry(sound)).peak(filter), gain: this.#gain.value };
  }

  /** Hears a mount that is not on the shelf in the place of the heard one, until another is, or none. */
  tryMount(filter: Float32Array | null): void {
    this.#branches.tried = filter;
  }

  /** Has a sound made ready that may be chosen next. */
  expect(sound: BenchSound): void {
    // Should it fail, that will be told when it is chosen.
    this.#cache.loop(sound, null, this.#bench.sampleRate).catch(() => undefined);
  }

  async close(): Promise<void> {
    this.#lab.close();
    await this.#playback.close();
  }

  /** Hands the whole bench to the graph: nothing sounds before its sound is there, and before it is known that it has room. */
  async #prepare(room: Room): Promise<void> {
    const { sound } = this.#bench.file;
    const loop = await this.#loop.prepare(sound);
    const gain = await this.#gain.prepare(loop);
    this.#branches.load(this.#bench.stands);
    this.#loop.begin(loop);
    room.setBenchGain(gain, 0);
    room.hear(this.hearing.place);
  }

  /** A recording whose file is not open: nothing of another sound may go on under its name. */
  #gone(): void {
    this.levels.forget();
    if (this.playing) this.stop();
  }
}
