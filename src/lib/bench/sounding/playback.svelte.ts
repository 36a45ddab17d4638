import type { ListeningRoom } from '../../audio/listening-room.js';
import { sentence } from '../../format/sentence.js';
import type { Hertz } from '../../units.js';
import type { Bench } from '../bench.svelte.js';

/** What the bench asks of the place where its sounds are heard. */
export type Room = Pick<
  ListeningRoom,
  | 'sampleRate'
  | 'now'
  | 'onStateChange'
  | 'setBranch'
  | 'hear'
  | 'hearAcrossPause'
  | 'silence'
  | 'setSound'
  | 'setHorn'
  | 'setNoise'
  | 'setNoiseLevel'
  | 'blow'
  | 'setBenchGain'
  | 'setVolume'
  | 'play'
  | 'stop'
  | 'earCheck'
  | 'close'
>;

/** Opens the room, at this rate where the machine allows it. To be called from a click or a key. */
export type OpenRoom = (options: { sampleRate: Hertz }) => Promise<Room>;

/** The slider is a rough loudness scale: half-way down is about 12 dB less. */
function volumeGain(volume: number): number {
  return volume * volume;
}

/** Whether it plays and how loud, and the room in which it is heard, which the first click opens. */
export class Playback {
  playing = $state(false);
  preparing = $state(false);
  /** Whether it has ever played. */
  hasPlayed = $state(false);
  silenced = $state(false);
  /** The user's volume, 0 … 1. It starts low. */
  volume = $state(0.5);
  /** One sentence where the sound could not start or go on. */
  problem = $state<string | null>(null);

  #bench: Pick<Bench, 'sampleRate'>;
  #openRoom: OpenRoom;
  #opening: Promise<Room> | null = null;
  #room: Room | null = null;

  constructor(bench: Pick<Bench, 'sampleRate'>, openRoom: OpenRoom) {
    this.#bench = bench;
    this.#openRoom = openRoom;
  }

  /** Null until it is open. */
  get room(): Room | null {
    return this.#room;
  }

  /** Keeps the volume in step. Call while a component starts. */
  connect(): void {
    $effect(() => {
      const gain = volumeGain(this.volume);
      this.#room?.setVolume(gain);
    });
  }

  /** Starts the sound, once it is prepared. Must be called from a click or a key. */
  async play(prepare: (room: Room) => Promise<void>): Promise<void> {
    if (this.playing || this.preparing) return;
    this.preparing = true;
    this.problem = null;
    try {
      const room = await this.#open();
      await prepare(room);
      room.setVolume(volumeGain(this.volume));
      await room.play();
      this.playing = this.hasPlayed = true;
    } catch (error) {
      this.tell(error);
    } finally {
      this.preparing = false;
    }
  }

  stop(): void {
    this.#room?.stop();
    this.playing = false;
  }

  silence(on: boolean): void {
    this.silenced = on;
    this.#room?.silence(on);
  }

  /** Plays the quiet pair of the ear check. */
  async earCheck(): Promise<void> {
    this.problem = null;
    try {
      await (await this.#open()).earCheck();
    } catch (error) {
      this.tell(error);
    }
  }

  async close(): Promise<void> {
    await this.#room?.close();
  }

  tell = (error: unknown): void => {
    this.problem = sentence(error);
  };

  #open(): Promise<Room> {
    this.#opening ??= this.#openRoom({ sampleRate: this.#bench.sampleRate }).then(
      (room) => {
        this.#room = room;
        this.#bench.sampleRate = room.sampleRate;
        room.onStateChange = (state) => {
          if (state === 'running' || !this.playing) return;
          this.playing = false;
          this.problem = 'The browser has stopped the sound. Press play to go on.';
        };
        return room;
      },
      (error: unknown) => {
        this.#opening = null;
        throw error;
      }
    );
    return this.#opening;
  }
}
