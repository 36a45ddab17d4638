import type { Lift } from '../../acoustics/speaker/lift.js';
import type { Stand } from '../../evaluation/stand.js';
import { type Strained, strainFilters } from '../../evaluation/limits.js';
import type { Answer } from '../../evaluation/answer.js';
import type { Hertz } from '../../units.js';
import { NewestWins } from '../../workers/link/newest-wins.js';
import type { LabClient } from '../../workers/sound/client.js';
import type { Loop } from './sound-cache.js';

/** What the sound that plays asks of the heard stand's speaker: measured by the worker, while somebody looks. */
export class Strains {
  /** With the low end lifted as it is. Null until it is known. */
  current = $state.raw<Strained | null>(null);
  /** Without a lift: the same where there is none. */
  unlifted = $state.raw<Strained | null>(null);
  /** What it was measured of. */
  of = $state.raw<{ loop: Loop; answer: Answer; place: number } | null>(null);

  #lab: Pick<LabClient, 'ask'>;
  #newest: NewestWins;
  #watching = $state(0);
  /** Of what `unlifted` was measured: another lift changes nothing of it. */
  #unliftedOf: { loop: Loop; driven: Answer['driven'] } | null = null;

  /** `tell` hears why the worker could not answer. */
  constructor(lab: Pick<LabClient, 'ask'>, tell: (error: unknown) => void) {
    this.#lab = lab;
    this.#newest = new NewestWins({ replaces: 'waiting', tell });
  }

  /** Somebody looks. Returns what ends it. */
  watch(): () => void {
    this.#watching++;
    return () => this.#watching--;
  }

  /** Follows what is heard as long as somebody looks. Call while a component starts. */
  connect(heard: () => { stand: Stand; loop: Loop | null; sampleRate: Hertz }): void {
    $effect(() => {
      if (this.#watching === 0) return;
      const { stand, loop, sampleRate } = heard();
      const answer = stand.computed?.answer;
      if (loop && answer) this.#newest.run(() => this.#ask(loop, answer, stand.index, sampleRate));
    });
  }

  async #ask(loop: Loop, answer: Answer, place: number, sampleRate: Hertz): Promise<void> {
    if (this.of?.loop === loop && this.of.answer === answer) return;
    const { driven, lift } = answer;
    const isKnown = this.#unliftedOf?.loop === loop && this.#unliftedOf.driven === driven;
    const unlifted = isKnown ? this.unlifted : await this.#measure(loop, answer, sampleRate, null);
    this.current = lift ? await this.#measure(loop, answer, sampleRate, lift) : unlifted;
    this.unlifted = unlifted;
    this.#unliftedOf = { loop, driven };
    this.of = { loop, answer, place };
  }

  async #measure(loop: Loop, answer: Answer, sampleRate: Hertz, lift: Lift | null): Promise<Strained> {
    const { terminals, displacement, current } = strainFilters(answer, sampleRate, lift);
    const { own, through } = await this.#lab.ask({
      kind: 'strainThrough',
      key: loop.key,
      impulseResponses: [...displacement, ...current, ...(terminals ? [terminals] : [])]
    });
    const cones = displacement.length;
    return {
      own,
      displacement: through.slice(0, cones),
      current: through.slice(cones, 2 * cones),
      terminals: terminals ? through[2 * cones] : own
    };
  }
}
