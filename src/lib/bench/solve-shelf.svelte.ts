import { untrack } from 'svelte';
import type { Bench } from './bench.svelte.js';
import type { Elsewhere } from './elsewhere.svelte.js';
import { isAwaited } from '../evaluation/models.js';
import type { Wish } from '../evaluation/wave-jobs.js';
import type { WaveAnswers } from '../evaluation/wave-answers.svelte.js';

/**
 * Has the mounts on the shelf solved while the bench asks for the wave solution, the heard one first; the first of them once the first
 * sound has begun, which is not to wait for them. Last what is coming, and those of the other place, at leisure. Call while a component starts.
 */
export function solveShelf(
  bench: Bench,
  waves: Pick<WaveAnswers, 'want'>,
  begun: () => boolean,
  elsewhere: Pick<Elsewhere, 'stands'> = { stands: [] },
  coming: () => readonly Wish[] = () => []
): void {
  let waiting = true;
  $effect(() => {
    if (waiting && !begun()) return;
    waiting = false;
    const { stands, heard, listener, model, file, dragging } = bench;
    const order = isAwaited(model) ? [heard, ...stands.filter((stand) => stand !== heard)] : [];
    const wishes = order
      .filter(({ problem }) => !problem)
      .map(({ index, installation }) => ({ place: index, installation, air: file.air, listener }));
    const there = elsewhere.stands.flatMap(({ index, problem, installation }) =>
      problem
        ? []
        : [{ place: index, installation, air: file.air, listener: bench.elsewhere, atLeisure: true }]
    );
    const soon = coming();
    untrack(() => waves.want([...wishes, ...soon, ...there], !dragging));
  });
}
