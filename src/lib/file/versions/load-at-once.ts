import { isJsonObject } from '../json/json-object.js';
import type { VersionStep } from './version-step.js';

/**
 * Diesels of version 1 took their load at once, whatever drove their wheels. It is written out, so that those of an old bench
 * ride as they did; a newer one that does not say its time has that of the first diesel.
 */
export const LOAD_AT_ONCE: VersionStep = {
  from: 1,
  to: 1,
  raise(file) {
    const { sound } = file;
    return isJsonObject(sound) && sound.kind === 'diesel' && sound.loading === undefined
      ? { ...file, sound: { ...sound, loading: 0 } }
      : file;
  }
};
