import type { Listener } from '../../../acoustics/listener.js';
import { modelAt, models, whereItListens } from '../../../evaluation/models.js';
import type { Stand } from '../../../evaluation/stand.js';
import type { BenchFile, ModelName } from '../../../file/bench-file.js';
import { MODEL_TITLES } from './model-titles.js';
import { placeWords } from './place-words.js';

/** What a level figure is made from. */
export interface Compared {
  file: Pick<BenchFile, 'view' | 'setups' | 'lift'>;
  listener: Listener;
  /** The mount that the figure is of, and the one it is written against. */
  heard: Pick<Stand, 'computed'>;
  measuredAgainst: Pick<Stand, 'computed'>;
}

/**
 * What the level figure of the heard mount holds for: the sound, the model, the place, and how hard the speakers are driven. In a
 * hall the sound goes by its name.
 */
export function holdsFor({ file, listener, heard, measuredAgainst }: Compared, sound = 'this sound'): string {
  const { inches, sameLoudness } = file.view;
  const model = modelAt(
    file.view.model,
    listener,
    file.setups.map(({ mount }) => mount)
  );
  const answered = [heard, measuredAgainst].map(({ computed }) => computed?.answer.model ?? model);
  // What stands in may know less of places than the model that was chosen.
  const place = answered.every((one) => one === answered[0])
    ? whereItListens(answered[0], listener)
    : listener;
  const drive = file.lift ? 'same drive and lift' : 'same drive';
  const parts = [sound, modelWords(model, answered), placeWords(place, inches), drive];
  return parts.join(', ') + (sameLoudness ? '; played equally loud now' : '');
}

/** The model by which the figure was found, which is not the chosen one as long as that is awaited. */
function modelWords(chosen: ModelName, answered: readonly ModelName[]): string {
  const { standIn } = models[chosen];
  if (standIn === null || answered.every((model) => model === chosen)) return MODEL_TITLES[chosen];
  return answered.includes(chosen)
    ? `${MODEL_TITLES[chosen]} against ${MODEL_TITLES[standIn]}`
    : `${MODEL_TITLES[standIn]} for now`;
}
