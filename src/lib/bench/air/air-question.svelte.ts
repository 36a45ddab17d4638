import { untrack } from 'svelte';
import type { Installation } from '../../acoustics/installation.js';
import type { Listener } from '../../acoustics/listener.js';
import { models } from '../../evaluation/models.js';
import type { Decibels, Hertz } from '../../units.js';
import { ACCURACY } from '../../waves/mesh/accuracy.js';
import type { MountAsked } from '../../workers/waves/wave-protocol.js';
import type { Stand } from '../../evaluation/stand.js';
import type { Bench } from '../bench.svelte.js';

/** The wave picture shows no tone below this: it would not move within the picture. */
const LOWEST: Hertz = 100;

/** What of the bench the air is asked about. */
export type HeardBench = Pick<
  Bench,
  'heard' | 'measuredAgainst' | 'file' | 'model' | 'listener' | 'dragging'
>;

/** What is asked of the air: around which mounts, at which frequency, and whether anybody looks. */
export class AirQuestion {
  /** The frequency that was pointed at last. */
  frequency = $state<Hertz>(1000);
  mode = $state<'tone' | 'puff'>('tone');

  /** How many panels show it now; nothing is computed for none. */
  #watched = $state(0);
  #bench: HeardBench;

  constructor(bench: HeardBench) {
    this.#bench = bench;
  }

  /** What can be shown: the pointed frequency, within what is solved. */
  readonly shownFrequency: Hertz = $derived.by(() => {
    const { answer } = this.#bench.heard.computed ?? {};
    const most =
      answer && models[answer.model].field && !answer.provisional ? answer.solvedTo : ACCURACY.draft.highest;
    return Math.min(Math.max(this.frequency, LOWEST), most);
  });

  /** The heard mount in the wave solution, if it can be solved and somebody looks. */
  readonly asked: MountAsked | null = $derived.by(() => {
    const { heard, model, file, dragging } = this.#bench;
    if (this.#watched === 0 || !models[model].field || heard.problem || heard.refused) return null;
    return { installation: heard.installation, air: file.air, accuracy: dragging ? 'draft' : 'full' };
  });

  /** The mount that it is drawn against, if it is another one that can be solved. */
  readonly against: Installation | null = $derived.by(() => {
    const { heard, measuredAgainst } = this.#bench;
    const { installation, problem, refused } = measuredAgainst;
    return measuredAgainst === heard || problem || refused ? null : installation;
  });

  /** By how much the speakers of the two are more sensitive than the one whose endless plate is 0 dB. */
  readonly drivesDb: { heard: Decibels; against: Decibels } = $derived.by(() => ({
    heard: driveDb(this.#bench.heard),
    against: driveDb(this.#bench.measuredAgainst)
  }));

  /** The mount that is heard, solved or not. */
  readonly heard: Installation = $derived.by(() => this.#bench.heard.installation);

  readonly medium: MountAsked['air'] = $derived.by(() => this.#bench.file.air);

  readonly plane: Listener['plane'] = $derived.by(() => this.#bench.listener.plane);

  get distance(): Listener['distance'] {
    return this.#bench.listener.distance;
  }

  /** Up to where a full solution of the heard mount is to be believed. */
  get fullySolvedTo(): Hertz {
    const { answer } = this.#bench.heard.computed ?? {};
    return answer && models[answer.model].field && !answer.provisional
      ? answer.solvedTo
      : ACCURACY.full.highest;
  }

  /** Has it computed until what is returned is called: somebody looks. */
  watch(): () => void {
    untrack(() => this.#watched++);
    return () => this.#watched--;
  }
}

function driveDb({ computed }: Stand): Decibels {
  return 20 * Math.log10(computed?.answer.drive ?? 1);
}
