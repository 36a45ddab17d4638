import { untrack } from 'svelte';
import { ListeningRoom } from '../../audio/listening-room.js';
import { MAX_STRETCH } from '../../sounds/recording/check-recording.js';
import type { Installation } from '../../acoustics/installation.js';
import type { Decibels } from '../../units.js';
import { LabClient } from '../../workers/sound/client.js';
import type { Signal } from '../../sounds/driving.js';
import { isMoving } from '../../sounds/kinds.js';
import { aTaskLater } from '../a-task-later.svelte.js';
import type { Bench } from '../bench.svelte.js';
import type { Stand } from '../../evaluation/stand.js';
import type { BenchSound, ModelName } from '../../file/bench-file.js';
import { type Answer, ruleAnswer, waveAnswer } from '../../evaluation/answer.js';
import type { WaveAnswers } from '../../evaluation/wave-answers.svelte.js';
import { Headroom, type Reach } from './headroom.js';
import { Levels } from './levels.svelte.js';
import { Loops, type Loop } from './loops.js';
import { openRecording, withStretch, type Recording } from './open-recording.js';
import { Player } from './player.js';
import { sentence } from '../../format/sentence.js';

/** A mount that cannot be built is silent. */
const SILENT_FILTER = new Float32Array(2048);

/** One change is followed at once; of changes that come faster than this, only one that stays for so long. */
const SETTLING_MS = 80;

/** The notch at which a machine is loudest. */
const LOUDEST_NOTCH = 8;

/** The slider is a rough loudness scale: half-way down is about 12 dB less. */
function volumeGain(volume: number): number {
  return volume * volume;
}

/**
 * The sound of the bench: keeps the loop, the audio graph and the level figures in step with what is set.
 * Every mount reaches it as one impulse response, whichever model made it.
 */
export class Sounding {
  loop = $state.raw<Loop | null>(null);
  /** The recording that was opened last, whether it is the bench's sound now or not. */
  opened = $state.raw<Recording | null>(null);
  playing = $state(false);
  preparing = $state(false);
  opening = $state(false);
  silenced = $state(false);
  blowing = $state(false);
  /** The user's volume, 0 … 1. It starts low. */
  volume = $state(0.5);
  /** One sentence where the sound could not start or go on. */
  problem = $state<string | null>(null);
  /** One sentence about a recording that could not be opened, shown beside the file. */
  recordingProblem = $state<string | null>(null);

  #bench: Bench;
  #lab: LabClient;
  #waves: Pick<WaveAnswers, 'draft'> | null;
  #loops: Loops;
  #levels: Levels;
  #headroom: Headroom;
  #changedAt = -Infinity;
  #gain = $state<number | null>(null);
  /** The model for which that gain was found: nothing of another one is played before there is room for it. */
  #gainFor = $state<ModelName | null>(null);
  #room: ListeningRoom | null = null;
  #player: Player | null = null;
  /** What each branch of the graph filters with, so that only those are loaded again that change. */
  #loaded: { filter: Float32Array; gain: number }[] = [];
  #opened: Promise<ListeningRoom> | null = null;

  constructor(bench: Bench, waves: Pick<WaveAnswers, 'draft'> | null = null, lab = new LabClient()) {
    this.#bench = bench;
    this.#waves = waves;
    this.#lab = lab;
    this.#loops = new Loops(lab);
    this.#levels = new Levels(lab, this.#tell);
    this.#headroom = new Headroom(lab);
    lab.onDied = (message) => (this.problem = message);
  }

  /** The bench's sound by itself: it stays the same one while other things are edited. */
  readonly #sound: BenchSound = $derived.by(() => this.#bench.file.sound);

  /** The recording that is the bench's sound, with the stretch that the bench names; null where its file is not open. */
  readonly recording: Recording | null = $derived.by(() => {
    const sound = this.#sound;
    if (sound.kind !== 'recording' || this.opened?.name !== sound.name) return null;
    const from = sound.from ?? 0;
    return withStretch(this.opened, from, sound.until ?? from + MAX_STRETCH);
  });

  /** What stands where a level will be: it is being measured, or it cannot be. */
  readonly levelPending: string = $derived.by(() => {
    const { sound } = this.#bench.file;
    if (sound.kind === 'recording' && !this.recording && !this.opening) return 'its sound is not open';
    return this.problem && !this.loop ? 'not measured' : 'listening …';
  });

  /** How much louder a stand is than the one measured against, on this sound; null until measured. */
  difference(stand: Stand): Decibels | null {
    return this.#levels.difference(stand, this.#bench.measuredAgainst);
  }

  /** Keeps everything in step. Call while a component starts. */
  connect(): void {
    $effect(() => {
      const [sound, recording, sampleRate] = [this.#sound, this.recording, this.#bench.sampleRate];
      const now = performance.now();
      const hasty = now - this.#changedAt < 2 * SETTLING_MS;
      this.#changedAt = now;
      let stale = false;
      const fetch = async (): Promise<void> => {
        // A lever on its way renders nothing at the notches it only passes.
        if (hasty) await new Promise((resolve) => setTimeout(resolve, SETTLING_MS));
        if (stale) return;
        const plays = untrack(() => this.playing);
        const ridden = plays ? await this.#player!.ride(sound, sampleRate, () => stale) : null;
        if (stale) return;
        const loop = ridden ?? (await this.#loops.of(sound, recording, sampleRate));
        if (stale) return;
        // It is heard before it is drawn.
        if (loop && this.playing && loop !== this.#player!.loop) await this.#change(loop, () => stale);
        if (stale) return;
        this.loop = loop;
        if (loop) return;
        // A recording whose file is not open: nothing of another sound may go on under its name.
        this.#levels.forget();
        if (this.playing) this.stop();
      };
      fetch().catch((error: unknown) => {
        if (!stale) this.#tell(error);
      });
      return () => (stale = true);
    });

    $effect(() => {
      const { loop } = this;
      if (!loop || !this.playing || loop === this.#player!.loop) return;
      // What was chosen while the first sound was being made ready.
      let stale = false;
      untrack(() => this.#change(loop, () => stale)).catch(this.#tell);
      return () => (stale = true);
    });

    $effect(() => {
      const signal = signalOf(this.#sound);
      const { sampleRate } = this.#bench;
      if (!this.playing) return;
      this.#loops
        .blast(signal, sampleRate)
        .then(({ samples, loopFrom }) => this.#room?.setHorn(samples, loopFrom), this.#tell);
    });

    // Filters are made a task after what they are made from: a key or an answer is shown first.
    const later = aTaskLater(() => ({ stands: this.#bench.stands }));

    $effect(() => {
      later.current.stands.forEach(this.#setBranch);
    });

    $effect(() => {
      // Read before the room is asked for: where there is none yet, nothing behind `?.` would be seen.
      const { heard } = this.#bench.file.view;
      this.#room?.hear(heard);
    });

    $effect(() => {
      const { loop } = this;
      const { stands } = later.current;
      if (loop) untrack(() => this.#levels.measure({ loop, stands }));
    });

    $effect(() => {
      if (!this.loop || this.#bench.dragging) return;
      let stale = false;
      const tellUnlessStale = (error: unknown): void => {
        if (!stale) this.#tell(error);
      };
      const { model } = this.#bench.file.view;
      this.#findGain(this.loop, this.#reach(), true).then((gain) => {
        if (!stale) [this.#gain, this.#gainFor] = [gain, model];
      }, tellUnlessStale);
      return () => (stale = true);
    });

    $effect(() => {
      if (this.#gain !== null) this.#room?.setBenchGain(this.#gain);
    });

    $effect(() => {
      const gain = volumeGain(this.volume);
      this.#room?.setVolume(gain);
    });
  }

  /** Starts the sound. Must be called from a click or a key. */
  async play(): Promise<void> {
    if (this.playing || this.preparing) return;
    this.preparing = true;
    this.problem = null;
    try {
      await this.#prepare(await this.#open());
      await this.#room!.play();
      this.playing = true;
    } catch (error) {
      this.#tell(error);
    } finally {
      this.preparing = false;
    }
  }

  stop(): void {
    this.blow(false);
    this.#room?.stop();
    this.playing = false;
  }

  silence(on: boolean): void {
    this.silenced = on;
    this.#room?.silence(on);
  }

  blow(on: boolean): void {
    if (on === this.blowing || (on && !this.playing)) return;
    this.blowing = on;
    this.#room?.blow(on);
  }

  /** Plays the quiet pair of the ear check. */
  async earCheck(): Promise<void> {
    this.problem = null;
    try {
      await (await this.#open()).earCheck();
    } catch (error) {
      this.#tell(error);
    }
  }

  /** Opens the user's own recording. What played before stays if it cannot be opened. */
  async openRecording(file: File): Promise<void> {
    this.opening = true;
    this.recordingProblem = null;
    try {
      const { sound } = this.#bench.file;
      this.opened = await openRecording(file, this.#bench.sampleRate);
      // The bench may name this very file and a stretch of it, from an earlier evening.
      if (sound.kind !== 'recording' || sound.name !== file.name)
        this.#bench.setSound({ kind: 'recording', name: file.name });
    } catch (error) {
      this.recordingProblem = sentence(error);
    } finally {
      this.opening = false;
    }
  }

  /** Has a sound made ready that may be chosen next. */
  expect(sound: BenchSound): void {
    // Should it fail, that will be told when it is chosen.
    this.#loops.of(sound, null, this.#bench.sampleRate).catch(() => undefined);
  }

  chooseStretch(start: number, end: number): void {
    if (!this.recording) return;
    const chosen = withStretch(this.recording, start, end);
    this.#bench.setSound(
      { kind: 'recording', name: chosen.name, from: chosen.start, until: chosen.end },
      'stretch'
    );
  }

  async close(): Promise<void> {
    this.#lab.close();
    await this.#room?.close();
  }

  #tell = (error: unknown): void => {
    this.problem = sentence(error);
  };

  #setBranch = (stand: Stand): void => {
    // Where nothing is known yet of the wave solution, the rule stands in: there is room for that in any case.
    if (this.#gainFor === 'rule' && stand.computed?.answer.model === 'wave') return;
    const filter = stand.computed?.impulseResponse ?? SILENT_FILTER;
    const gain = this.#bench.file.view.sameLoudness ? this.#levels.levelling(stand) : 1;
    const loaded = this.#loaded[stand.index];
    if (!this.#room || (loaded?.filter === filter && loaded.gain === gain)) return;
    this.#loaded[stand.index] = { filter, gain };
    this.#room.setBranch(stand.index, gain === 1 ? filter : filter.map((sample) => sample * gain));
  };

  #open(): Promise<ListeningRoom> {
    this.#opened ??= ListeningRoom.open({ sampleRate: this.#bench.sampleRate }).then(
      (room) => {
        this.#room = room;
        this.#player = new Player(room, this.#loops);
        this.#bench.sampleRate = room.sampleRate;
        room.onStateChange = (state) => {
          if (state === 'running' || !this.playing) return;
          this.playing = false;
          this.problem = 'The browser has stopped the sound. Press play to go on.';
        };
        return room;
      },
      (error: unknown) => {
        this.#opened = null;
        throw error;
      }
    );
    return this.#opened;
  }

  /** Hands the whole bench to the graph: nothing sounds before sound and headroom are known. */
  async #prepare(room: ListeningRoom): Promise<void> {
    const bench = this.#bench;
    const { sound, view } = bench.file;
    const loop = await this.#loops.of(sound, this.recording, bench.sampleRate);
    if (!loop) throw new Error('Choose a sound first: your recording is not open any more.');
    this.loop = loop;
    this.#gain = await this.#findGain(loop, this.#reach(), true);
    this.#gainFor = view.model;
    bench.stands.forEach(this.#setBranch);
    const blast = await this.#loops.blast(signalOf(sound), bench.sampleRate);
    room.setHorn(blast.samples, blast.loopFrom);
    this.#player!.exchange(loop, 0);
    room.setBenchGain(this.#gain, 0);
    room.setVolume(volumeGain(this.volume));
    room.hear(view.heard);
  }

  #reach(): Reach {
    const { file, listener, stands, sampleRate } = this.#bench;
    const installations = stands.filter(({ problem }) => !problem).map(({ installation }) => installation);
    const { air, view } = file;
    const rule = (probe: Installation): Answer => ruleAnswer(probe, air, { ...listener, angleDeg: 0 });
    const wave = async (probe: Installation): Promise<Answer> => {
      try {
        const known = await this.#waves!.draft({ installation: probe, air, listener });
        return waveAnswer(known.heard, known.accuracy, probe, air);
      } catch {
        // As on the shelf, the rule stands in for what cannot be solved.
        return rule(probe);
      }
    };
    const answer = view.model === 'wave' && this.#waves ? wave : rule;
    return { installations, answer, where: [view.model, air, listener], sampleRate };
  }

  /**
   * Fades to another loop, its gain first: nothing is ever played louder than the bench has room for. A lever that can go
   * higher is asked about while it plays, and takes longer to get there.
   */
  async #change(loop: Loop, stale: () => boolean): Promise<void> {
    const gain = await this.#findGain(loop, this.#reach(), false);
    if (stale()) return;
    if (this.#gain === null || gain < this.#gain) {
      this.#gain = gain;
      this.#room?.setBenchGain(gain);
    }
    this.#player!.exchange(loop);
  }

  /** The gain for this loop with the horn on top of it; with `all`, for whatever notch its lever can go to. */
  async #findGain(loop: Loop, reach: Reach, all: boolean): Promise<number> {
    const { sound } = loop;
    const loops = [loop];
    if (all && isMoving(sound) && !sound.runPast)
      loops.push((await this.#loops.of({ ...sound, notch: LOUDEST_NOTCH }, null, reach.sampleRate))!);
    const blast = await this.#loops.blast(signalOf(sound), reach.sampleRate);
    return this.#headroom.gain(reach, [loops, [blast]]);
  }
}

/** What the cord blows on a sound. */
function signalOf(sound: BenchSound): Signal {
  return isMoving(sound) ? sound.signal : 'five-note horn';
}
