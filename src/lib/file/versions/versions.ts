import type { JsonObject } from '../json/json-object.js';
import { quoted } from '../json/quoted.js';
import { DRIVE_TOLD } from './drive-told.js';
import { ENGINE_TO_DIESEL } from './engine-to-diesel.js';
import { LOAD_AT_ONCE } from './load-at-once.js';
import { HALL_TOLD } from './hall-told.js';
import { LAYOUT_TOLD } from './layout-told.js';
import { MODEL_SAID } from './model-said.js';
import { OFF_MIDDLE_TOLD } from './off-middle-told.js';
import { OPENINGS_TOLD } from './openings-told.js';
import { TRIALS_TOLD } from './trials-told.js';
import type { VersionStep } from './version-step.js';

/**
 * Every form that a bench file has had, oldest first. A new version is a step of its own in a file of its own, and a line
 * here; the program then writes what the last step leads to.
 */
const STEPS: readonly [VersionStep, ...VersionStep[]] = [
  ENGINE_TO_DIESEL,
  LOAD_AT_ONCE,
  MODEL_SAID,
  LAYOUT_TOLD,
  OPENINGS_TOLD,
  DRIVE_TOLD,
  TRIALS_TOLD,
  HALL_TOLD,
  OFF_MIDDLE_TOLD
];

/** The version this program writes: the one that the steps lead to. */
export const BENCH_VERSION = newestOf(STEPS);

/**
 * The file in the form of the newest version, whatever version it was of; step by step, each from one form to the next.
 * @throws RangeError with one sentence: a version that no step knows, or what a step cannot carry over
 */
export function raiseToNewest(file: JsonObject, steps: readonly VersionStep[] = STEPS): JsonObject {
  checkVersion(file.version, steps);
  let raised = file;
  for (const { from, to, raise } of steps)
    if (raised.version === from) raised = { ...raise(raised), version: to };
  return raised;
}

function checkVersion(version: unknown, steps: readonly VersionStep[]): void {
  const [oldest, newest] = [steps[0].from, newestOf(steps)];
  if (typeof version === 'number' && Number.isInteger(version) && version >= oldest && version <= newest)
    return;
  const said = version === undefined ? 'does not say its version' : `is of version ${quoted(version)}`;
  const read = oldest === newest ? `version ${newest}` : `versions ${oldest} … ${newest}`;
  throw new RangeError(`this bench file ${said}; this program reads ${read}`);
}

function newestOf(steps: readonly VersionStep[]): number {
  return steps[steps.length - 1].to;
}
