import { peak } from '../../listening/peak.js';
import { loopLoudness } from '../../listening/loudness.js';
import { measureSound } from '../../listening/measure-sound.js';
import { strain } from '../../listening/strain.js';
import { LoopFilter } from '../../numeric/filter-with.js';
import { renderPlaceNoise } from '../../sounds/places/render-place-noise.js';
import type { Hertz } from '../../units.js';
import type { Answers, Question } from './protocol.js';
import { aligningGain, SoundBank } from './sound-bank.js';

interface Sound {
  samples: Float32Array;
  sampleRate: Hertz;
}

interface Kept extends Sound {
  /** One filter a length of impulse response. */
  filters: Map<number, LoopFilter>;
}

/** Where questions are answered, and where the sounds lie that later questions are about. */
export class Desk {
  readonly #bank = new SoundBank();
  readonly #kept = new Map<string, Kept>();

  /**
   * The answer to one question, of the type that `Answers` lists for its kind.
   * @throws Error for a kind or a key that is not known, RangeError for values out of range
   */
  answer(question: Question): Answers[Question['kind']] {
    switch (question.kind) {
      case 'prepare':
        this.#bank.prepare(question.sound, question.sampleRate);
        return null;
      case 'sound':
        return this.#bank.loop(question.sound, question.sampleRate);
      case 'ride':
        return this.#bank.ride(question.sound, question.from, question.sampleRate);
      case 'blast':
        return this.#bank.blast(question.signal, question.sampleRate);
      case 'place':
        return renderPlaceNoise(question.place, question.sampleRate);
      case 'keep': {
        const { key, sampleRate, align } = question;
        if (question.samples.length === 0) throw new RangeError('a loop must have at least 1 sample, got 0');
        allNumbers(question.samples, 'samples of a sound');
        const gain = align ? aligningGain(question.samples, sampleRate) : 1;
        const samples = align ? question.samples.map((x) => gain * x) : question.samples;
        this.#kept.set(key, { samples, sampleRate, filters: new Map() });
        return { gain };
      }
      case 'figures': {
        const { samples, sampleRate } = this.#keptUnder(question.key);
        return measureSound(samples, sampleRate);
      }
      case 'forget':
        this.#kept.delete(question.key);
        return null;
      case 'loudnessThrough':
        return this.#through(question, ({ samples, sampleRate }) => loopLoudness(samples, sampleRate));
      case 'peaksThrough':
        return this.#through(question, ({ samples }) => peak(samples));
      case 'strainThrough': {
        const { samples, sampleRate } = this.#keptUnder(question.key);
        return {
          own: strain(samples, sampleRate),
          through: this.#through(question, (sound) => strain(sound.samples, sound.sampleRate))
        };
      }
      default:
        throw new Error(`nothing here answers "${(question as { kind: string }).kind}"`);
    }
  }

  #keptUnder(key: string): Kept {
    const kept = this.#kept.get(key);
    if (!kept) throw new Error(`no sound is kept under "${key}"`);
    return kept;
  }

  /** What is measured of a kept sound behind each of these impulse responses. All are written into one array, in turn. */
  #through<T>(
    { key, impulseResponses }: { key: string; impulseResponses: Float32Array[] },
    measured: (sound: Sound) => T
  ): T[] {
    const kept = this.#keptUnder(key);
    const { sampleRate } = kept;
    const out = new Float32Array(kept.samples.length);
    return impulseResponses.map((response) =>
      measured({ samples: through(kept, response, out), sampleRate })
    );
  }
}

function through({ samples, filters }: Kept, response: Float32Array, out: Float32Array): Float32Array {
  const taps = response.length;
  if (!(taps >= 1 && Number.isInteger(Math.log2(taps))))
    throw new RangeError(`length of an impulse response must be a power of two, got ${taps}`);
  allNumbers(response, 'samples of an impulse response');
  let filter = filters.get(taps);
  if (!filter) filters.set(taps, (filter = new LoopFilter(samples, taps)));
  return filter.through(response, out);
}

function allNumbers(samples: Float32Array, name: string): void {
  for (let i = 0; i < samples.length; i++)
    if (!Number.isFinite(samples[i]))
      throw new RangeError(`${name} must be finite numbers, got ${samples[i]}`);
}
