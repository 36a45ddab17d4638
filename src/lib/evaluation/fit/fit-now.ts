import type { Candidate } from '../../fitting/candidate.js';
import { fit } from '../../fitting/fit.js';
import type { Misfit } from '../../fitting/why-not.js';
import type { BenchFile, Setup } from '../../file/bench-file.js';
import { powerSpectrum } from '../../listening/power-spectrum.js';
import { strain } from '../../listening/strain.js';
import { LoopFilter } from '../../numeric/filter-with.js';
import { USUAL_RATE } from '../../sounds/blocks/sample-rate.js';
import type { GeneratedSound } from '../../sounds/kinds.js';
import { SoundBank } from '../../workers/sound/sound-bank.js';
import type { AccuracyName } from '../../waves/mesh/accuracy.js';
import type { Answer } from '../answer.js';
import { FIELD_MODEL } from '../models.js';
import { answerNow } from '../solve-now.js';
import { drawerOf, priceOfCandidate, questionOfCandidate, setupOfCandidate } from './drawer.js';
import {
  loudestOf,
  measuresOf,
  triedSound,
  type Loudest,
  type Measures,
  type TriedSound
} from './measures.js';
import { soundsOf, triedVolts, triedWith } from './tried-with.js';
import { ranked, type Measured, type MeasureName } from './ranking.js';
import { firstToTry, nextToTry } from './sizes-to-try.js';

export interface FitAsked {
  by: MeasureName;
  /** Whether every size of the boxes is tried, or those round the best. */
  everySize: boolean;
  accuracy: AccuracyName;
  /** Volts (rms); null where the file decides, and 1 V where it says none. */
  drive: number | null;
}

/** A line of the ranking as `predict --fit` prints it. */
export interface FitPredictionLine extends Measures {
  /** From 1; lines that are tied have the same. */
  place: number;
  tied: boolean;
  name: string;
  speaker: string;
  way: Candidate['way'];
  /** What it takes of the inside, m³. */
  space: number;
  /** In whatever money; null where the price of the speaker is not told. */
  price: number | null;
  loudest: Loudest | null;
  /** Ready to be put among the setups of a bench file. */
  setup: Setup;
}

/** What `predict --fit` prints as JSON. */
export interface FitPrediction {
  model: string;
  by: MeasureName;
  accuracy: AccuracyName;
  /** Volts (rms) at the terminals of every one. */
  drive: number;
  sounds: string[];
  ranking: FitPredictionLine[];
  /** Sizes of boxes that fit, between those of the ranking, and were not tried. */
  untried: number;
  /** What fits and could not be solved, and why. */
  refused: { name: string; speaker: string; why: string }[];
  misfits: Misfit[];
}

/**
 * Tries everything of a bench's drawer in its model, solved here and now, and ranks it: long work, for a terminal. Of the sizes of boxes those that
 * `firstToTry` and `nextToTry` name, or every one.
 *
 * @throws RangeError with one sentence where the bench has no model, an impossible one, or no sound that can be generated
 */
export async function fitNow(
  bench: BenchFile,
  { by, everySize, accuracy, drive }: FitAsked
): Promise<FitPrediction> {
  const { model } = bench;
  if (!model) throw new RangeError('this bench file says no model to be fitted out: it lacks "model"');
  const drawer = drawerOf(bench);
  const fitted = fit(model, drawer, bench.amplifier?.leastLoad);
  const sounds = soundsOf(bench, model);
  const volts = drive ?? triedVolts(bench);
  const tried = triedWith(bench, drawer, sounds.map(soundNow), volts, USUAL_RATE);
  const lines: (Measured & { candidate: Candidate })[] = [];
  const refused: (FitPrediction['refused'][number] & { key: string })[] = [];
  const add = async (candidate: Candidate): Promise<void> => {
    const { key, name, space } = candidate;
    const speaker = drawer[candidate.speaker];
    const question = questionOfCandidate(bench, drawer, candidate);
    let answer: Answer;
    try {
      answer = answerNow(FIELD_MODEL, question, accuracy, 'full');
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      refused.push({ key, name, speaker: candidate.speaker, why: error.message });
      return;
    }
    const measures = measuresOf(answer, speaker, tried);
    const loudest = await loudestOf(answer, measures.levelDb, speaker, tried);
    const price = priceOfCandidate(drawer, candidate);
    lines.push({ price, key, accuracy, measures, space, loudest, candidate });
  };
  let next = everySize ? fitted.candidates : firstToTry(fitted);
  while (next.length > 0) {
    for (const candidate of next) await add(candidate);
    next = nextToTry(
      fitted,
      lines,
      refused.map(({ key }) => key),
      by
    );
  }
  return {
    model: model.name,
    by,
    accuracy,
    drive: volts,
    sounds: sounds.map(({ name }) => name),
    ranking: ranked(lines, by).map(({ line, place, tied }) => ({
      place,
      tied,
      name: line.candidate.name,
      speaker: line.candidate.speaker,
      way: line.candidate.way,
      ...line.measures,
      space: line.space,
      price: line.price,
      loudest: line.loudest,
      setup: setupOfCandidate(line.candidate)
    })),
    untried: fitted.candidates.length - lines.length - refused.length,
    refused: refused.map(({ name, speaker, why }) => ({ name, speaker, why })),
    misfits: fitted.misfits
  };
}

function soundNow(sound: GeneratedSound): TriedSound {
  const samples = new SoundBank().loop(sound, USUAL_RATE);
  const filters = new Map<number, LoopFilter>();
  const through = (response: Float32Array): Float32Array => {
    const filter = filters.get(response.length) ?? new LoopFilter(samples, response.length);
    filters.set(response.length, filter);
    return filter.through(response);
  };
  return triedSound(powerSpectrum(samples, USUAL_RATE), USUAL_RATE, async (responses) => ({
    own: strain(samples, USUAL_RATE),
    through: responses.map((response) => strain(through(response), USUAL_RATE))
  }));
}
