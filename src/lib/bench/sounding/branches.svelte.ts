import { answerOf, asItKnows, models } from '../../evaluation/models.js';
import { filterFor, type Stand } from '../../evaluation/stand.js';
import type { Setup } from '../../file/bench-file.js';
import type { Bench } from '../bench.svelte.js';
import type { BenchGain } from './bench-gain.svelte.js';
import type { Hearing } from './hearing.svelte.js';
import type { Levels } from './levels.svelte.js';
import type { Playback } from './playback.svelte.js';

/** What the branches of the room are filled from. */
export interface BranchParts {
  bench: Pick<Bench, 'file' | 'model' | 'listener' | 'sampleRate'>;
  levels: Pick<Levels, 'levelling'>;
  /** Those among which one listens blind are brought to one loudness, unless they are to keep the same drive. */
  hearing: Pick<Hearing, 'among' | 'levelled'>;
  gain: Pick<BenchGain, 'hasRoomFor'>;
  playback: Pick<Playback, 'room'>;
}

/** A filter, and the drive that it has taken in. */
interface Driven {
  filter: Float32Array;
  drive: number;
}

/** A mount that cannot be built is silent. */
const SILENT: Driven = { filter: new Float32Array(2048), drive: 1 };

/**
 * The branches of the room: every mount reaches it as one impulse response, whichever model made it. All are driven alike; the
 * mount with the most sensitive speaker plays as if it were alone and the others as much softer as they are, so that nothing
 * gets louder when levels are written against another mount.
 */
export class Branches {
  /** What is heard in the place of the heard mount, as loud as it is to be; null: the mount itself. */
  tried = $state.raw<Float32Array | null>(null);

  #parts: BranchParts;
  /** What each branch filters with, so that only those are loaded again that change. */
  #loaded: (Driven & { setup: Setup; gain: number })[] = [];

  constructor(parts: BranchParts) {
    this.#parts = parts;
  }

  /** Keeps them in step. Call while a component starts. */
  connect(stands: () => readonly Stand[]): void {
    $effect(() => this.load(stands()));
  }

  load(stands: readonly Stand[]): void {
    const most = mostDrive(stands);
    for (const stand of stands) this.#load(stand, driveOf(stand) / most);
  }

  /** `share`: how sensitive its speaker is beside the most sensitive one. */
  #load(stand: Stand, share: number): void {
    const { bench, gain, playback } = this.#parts;
    const loaded = this.#loaded[stand.index];
    const { room } = playback;
    if (!room) return;
    if (this.tried && stand.index === bench.file.view.heard) {
      delete this.#loaded[stand.index];
      room.setBranch(stand.index, this.tried);
      return;
    }
    const { filter, drive } = gain.hasRoomFor(stand) ? drivenBy(stand) : this.#meanwhile(stand);
    const factor = (this.#levelling(stand) * share) / drive;
    if (loaded?.filter === filter && loaded.gain === factor) return;
    this.#loaded[stand.index] = { setup: stand.setup, filter, drive, gain: factor };
    room.setBranch(stand.index, factor === 1 ? filter : filter.map((sample) => sample * factor));
  }

  #levelling(stand: Stand): number {
    const { bench, levels, hearing } = this.#parts;
    const { among, levelled } = hearing;
    if (among) return levelled && among.includes(stand.index) ? levels.levelling(stand, among) : 1;
    return bench.file.view.sameLoudness ? levels.levelling(stand) : 1;
  }

  /** What is heard before there is room for what the model says: what was heard of these sizes, or what stands in. */
  #meanwhile({ index, setup, installation }: Stand): Driven {
    const loaded = this.#loaded[index];
    if (loaded?.setup === setup) return loaded;
    const { file, model, listener, sampleRate } = this.#parts.bench;
    const { standIn } = models[model];
    if (standIn === null) return SILENT;
    const question = asItKnows(standIn, { installation, air: file.air, listener });
    return { filter: filterFor(answerOf(standIn, question, null), sampleRate), drive: 1 };
  }
}

function drivenBy({ computed }: Stand): Driven {
  return computed ? { filter: computed.impulseResponse, drive: computed.answer.drive } : SILENT;
}

/** The drive of the most sensitive speaker: what plays of a mount is divided by it. */
export function mostDrive(stands: readonly Stand[]): number {
  return Math.max(...stands.map(driveOf));
}

/** Of a mount that cannot be built it says nothing. */
function driveOf({ computed }: Stand): number {
  return computed?.answer.drive ?? 1;
}
