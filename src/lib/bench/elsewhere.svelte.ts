import { isAwaited } from '../evaluation/models.js';
import type { Stand } from '../evaluation/stand.js';
import { Stands } from '../evaluation/stands.js';
import type { WaveAnswers } from '../evaluation/wave-answers.svelte.js';
import type { Bench } from './bench.svelte.js';

/**
 * The mounts of a bench in the other place: on the layout while they are held in the hand, and the other way round. They come when all is
 * known of where they are heard and the hand rests, so that they hold up nothing.
 */
export class Elsewhere {
  #bench: Bench;
  #stands: Stands;

  constructor(bench: Bench, waves: Pick<WaveAnswers, 'best' | 'refusal'> | null) {
    this.#bench = bench;
    this.#stands = new Stands(waves);
  }

  /** None as long as they are not to be asked for, and by a model that does not know both places. */
  readonly stands: readonly Stand[] = $derived.by(() => {
    const { file, elsewhere, stands, model, dragging, sampleRate } = this.#bench;
    if (!isAwaited(model) || dragging || stands.length < 2 || stands.some(isOnItsWay)) return [];
    return this.#stands.of({ ...file, listener: elsewhere }, elsewhere, sampleRate);
  });

  /** Whether all is known of them that will be. */
  readonly known: boolean = $derived.by(() => this.stands.length > 0 && !this.stands.some(isOnItsWay));
}

function isOnItsWay({ problem, awaited }: Stand): boolean {
  return problem === null && awaited;
}
