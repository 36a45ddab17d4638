import { isJsonObject, type JsonObject } from '../json/json-object.js';
import type { VersionStep } from './version-step.js';

/**
 * A file of version 1 that does not say which model draws and plays its mounts meant the rule of thumb; a newer one means the wave
 * solution. What it means is written out, so that an old bench opens as it was left.
 */
export const MODEL_SAID: VersionStep = {
  from: 1,
  to: 2,
  raise(file) {
    const { view = {} } = file;
    return isJsonObject(view) && view.model === undefined ? { ...file, view: byRule(view) } : file;
  }
};

function byRule(view: JsonObject): JsonObject {
  return { ...view, model: 'rule' };
}
