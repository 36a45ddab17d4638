import { isJsonObject, type JsonObject } from '../json/json-object.js';
import { quoted } from '../json/quoted.js';
import type { VersionStep } from './version-step.js';

/** Notches of the engine, and the one it stood at where the file did not say. */
const NOTCHES = { highest: 8, usual: 4 };

/**
 * Before there was a roster of sounds there was one engine, `{ "kind": "engine", "notch": 0 … 8 }`. It is the first diesel
 * of the roster, at that notch. Both forms say that they are of version 1.
 */
export const ENGINE_TO_DIESEL: VersionStep = {
  from: 1,
  to: 1,
  raise(file) {
    const { sound } = file;
    return isJsonObject(sound) && sound.kind === 'engine' ? { ...file, sound: dieselOf(sound) } : file;
  }
};

/** What is not said of a diesel is that of the first one. */
function dieselOf(engine: JsonObject): JsonObject {
  const { notch = NOTCHES.usual } = engine;
  const unknown = Object.keys(engine).find((key) => key !== 'kind' && key !== 'notch');
  if (unknown !== undefined) throw new RangeError(`sound has an unknown key ${quoted(unknown)}`);
  checkNotch(notch);
  return { kind: 'diesel', notch };
}

function checkNotch(notch: unknown): void {
  const got = `got ${quoted(notch)}`;
  if (typeof notch !== 'number') throw new RangeError(`sound.notch must be a number, ${got}`);
  if (!Number.isFinite(notch)) throw new RangeError(`sound.notch must be a finite number, ${got}`);
  if (!Number.isInteger(notch) || notch < 0 || notch > NOTCHES.highest)
    throw new RangeError(`sound.notch must be a whole number from 0 to ${NOTCHES.highest}, ${got}`);
}
