import { peak } from '../listening/peak.js';
import { loopLoudness } from '../listening/loudness.js';
import { measureSound } from '../listening/measure-sound.js';
import { LoopFilter } from '../numeric/filter-with.js';
import { renderHorn } from '../sounds/horn.js';
import { renderPinkNoise } from '../sounds/test-signals/pink-noise.js';
import { renderEngine } from '../sounds/render-engine.js';
import type { Hertz } from '../units.js';
import type { Answers, Heard, Question } from './protocol.js';

/** The noise is the same one every time. */
const PINK_SEED = 1770;

interface Kept {
  samples: Float32Array;
  sampleRate: Hertz;
  /** One filter a length of impulse response. */
  filters: Map<number, LoopFilter>;
}

/** Where questions are answered, and where the sounds lie that later questions are about. */
export class Desk {
  readonly #kept = new Map<string, Kept>();

  /**
   * The answer to one question, of the type that `Answers` lists for its kind.
   * @throws Error for a kind or a key that is not known, RangeError for values out of range
   */
  answer(question: Question): Answers[Question['kind']] {
    switch (question.kind) {
      case 'engine':
        return renderEngine(question.engine, question.notch, question.sampleRate);
      case 'horn':
        return renderHorn(question.sampleRate);
      case 'pinkNoise':
        return renderPinkNoise(question.seconds, question.sampleRate, PINK_SEED);
      case 'keep': {
        const { key, samples, sampleRate } = question;
        allNumbers(samples, 'samples of a sound');
        const figures = measureSound(samples, sampleRate);
        this.#kept.set(key, { samples, sampleRate, filters: new Map() });
        return figures;
      }
      case 'forget':
        this.#kept.delete(question.key);
        return null;
      case 'heardThrough': {
        const kept = this.#kept.get(question.key);
        if (!kept) throw new Error(`no sound is kept under "${question.key}"`);
        return question.impulseResponses.map((response) => heardThrough(kept, response));
      }
      default:
        throw new Error(`nothing here answers "${(question as { kind: string }).kind}"`);
    }
  }
}

function heardThrough(kept: Kept, response: Float32Array): Heard {
  const taps = response.length;
  if (!(taps >= 1 && Number.isInteger(Math.log2(taps))))
    throw new RangeError(`length of an impulse response must be a power of two, got ${taps}`);
  allNumbers(response, 'samples of an impulse response');
  let filter = kept.filters.get(taps);
  if (!filter) kept.filters.set(taps, (filter = new LoopFilter(kept.samples, taps)));
  const through = filter.through(response);
  return { loudness: loopLoudness(through, kept.sampleRate), peak: peak(through) };
}

function allNumbers(samples: Float32Array, name: string): void {
  for (let i = 0; i < samples.length; i++)
    if (!Number.isFinite(samples[i]))
      throw new RangeError(`${name} must be finite numbers, got ${samples[i]}`);
}
