import type { Listener } from '../acoustics/listener.js';
import type { Hertz } from '../units.js';
import type { BenchFile, ModelName, Setup } from '../file/bench-file.js';
import { installationOf } from '../file/installation-of.js';
import { refusal } from '../acoustics/refusal.js';
import { compute, type Computed, measure, type Stand, withMeasures } from './stand.js';
import { answerOf, isAwaited, modelAt, models } from './models.js';
import { SameDrive } from './same-drive.js';
import type { WaveAnswers } from './wave-answers.svelte.js';
import type { Known, Question } from './wave-jobs.js';

/**
 * The setups of a bench as they stand on the shelf, each made from what the chosen model says of it by now: one is computed anew
 * only when something it depends on was replaced. All are driven alike: 0 dB is the endless plate of the speaker of the mount
 * that levels are written against.
 */
export class Stands {
  #waves: Pick<WaveAnswers, 'best' | 'refusal'> | null;
  #made = new WeakMap<Setup, { inputs: unknown[]; stand: Stand }>();
  #sameDrive = new SameDrive();
  /** What was computed last at each place, and for which rate: it stays until the wave solution of a new size is there. */
  #last: { stand: Stand; sampleRate: Hertz }[] = [];

  /** `waves` holds what is known of the wave solution; without it the rule of thumb stands in. */
  constructor(waves: Pick<WaveAnswers, 'best' | 'refusal'> | null) {
    this.#waves = waves;
  }

  of(file: BenchFile, listener: Listener, sampleRate: Hertz): Stand[] {
    const own = file.setups.map((_, index) => this.#stand(file, index, listener, sampleRate));
    return this.#sameDrive.of(own, file, sampleRate);
  }

  #stand(file: BenchFile, index: number, listener: Listener, sampleRate: Hertz): Stand {
    const setup = file.setups[index];
    const { air } = file;
    const model = modelAt(
      file.view.model,
      file.listener,
      file.setups.map((one) => one.mount)
    );
    const stand: Stand = {
      index,
      numeral: String(index + 1),
      setup,
      installation: installationOf(file, setup, 'ideal'),
      computed: null,
      problem: null,
      awaited: false,
      refused: null
    };
    const wish = { installation: stand.installation, air, listener };
    const wanted = isAwaited(model) ? this.#waves : null;
    const known = wanted?.best(wish) ?? null;
    stand.refused = wanted?.refusal(wish) ?? null;
    stand.awaited =
      wanted !== null && stand.refused === null && known?.accuracy !== models[model].accuracies.at(-1);
    const speaker = file.speakers[setup.speaker];
    const inputs = [index, speaker, air, listener, sampleRate, model, known, stand.refused];
    const made = this.#made.get(setup);
    if (made && made.inputs.every((input, i) => input === inputs[i])) return made.stand;
    // A better answer is no other mount: what hangs on the mount goes on. Another board is another one.
    const kept = made && made.inputs[1] === speaker && !made.stand.problem ? made.stand.installation : null;
    const same = !kept?.board === !stand.installation.board ? kept : null;
    stand.problem = refusal(() => {
      stand.installation = same ?? installationOf(file, setup);
      stand.computed = this.#compute(stand, model, { air, listener }, sampleRate, known);
    });
    this.#made.set(setup, { inputs, stand });
    this.#last[index] = { stand, sampleRate };
    return stand;
  }

  #compute(
    { index, installation, awaited }: Stand,
    model: ModelName,
    { air, listener }: Pick<Question, 'air' | 'listener'>,
    sampleRate: Hertz,
    known: Known | null
  ): Computed {
    const last = this.#last[index];
    const kept = last?.sampleRate === sampleRate ? last.stand : null;
    if (
      !known &&
      awaited &&
      kept?.computed?.answer.model === model &&
      kept.installation.mount.kind === installation.mount.kind
    )
      return withMeasures(kept.computed, measure(installation, air));
    return compute(installation, air, answerOf(model, { installation, air, listener }, known), sampleRate);
  }
}
