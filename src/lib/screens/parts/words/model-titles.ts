import type { ModelName } from '../../../file/bench-file.js';

/** What a model is called. */
export const MODEL_TITLES: Readonly<Record<ModelName, string>> = {
  rule: 'rule of thumb',
  wave: 'wave solution'
};
