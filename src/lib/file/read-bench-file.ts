import * as v from 'valibot';
import { checkSound } from '../sounds/check-sound.js';
import type { GeneratedSound } from '../sounds/kinds.js';
import { refusal } from '../acoustics/refusal.js';
import { withDefaults } from './bench-defaults.js';
import { BenchFileError } from './bench-file-error.js';
import { BENCH_FILE_LIMITS } from './bench-file-limits.js';
import { benchFileSchema, type CheckedBenchFile } from './bench-file-schema.js';
import { benchFileSentence } from './bench-file-sentence.js';
import { BENCH_FORMAT, type BenchFile, type BenchSound } from './bench-file.js';
import { runProblem } from './blind-run.js';
import { isJsonObject, type JsonObject } from './json/json-object.js';
import { jsonSyntaxSentence } from './json/json-syntax-sentence.js';
import { quoted } from './json/quoted.js';
import { scanJson } from './json/scan-json.js';
import { sceneProblem } from './scene.js';
import { raiseToNewest } from './versions/versions.js';
import { roundProblem } from './vote-round.js';

/**
 * Reads a bench file: text → plain value with every default filled in (docs/file-format.md). Whether the
 * mounts can be built is not asked here but of `checkInstallation`, so that one impossible size does not
 * keep a whole file shut.
 * @throws BenchFileError, and nothing else, with one sentence that names the place.
 */
export function readBenchFile(text: string): BenchFile {
  if (text.length > BENCH_FILE_LIMITS.characters)
    throw new BenchFileError(
      `the bench file is ${(text.length / 1e6).toFixed(1)} million characters long; at most ${BENCH_FILE_LIMITS.characters / 1e6} million are read`
    );
  const json = text.startsWith('\ufeff') ? text.slice(1) : text;
  if (json.trim() === '') throw new BenchFileError('the bench file is empty');
  orBenchFileError(() => scanJson(json, BENCH_FILE_LIMITS.depth));
  const file = benchFileIn(json);
  const raised = orBenchFileError(() => raiseToNewest(file));
  checkCounts(raised);
  const checked = v.safeParse(benchFileSchema, raised);
  if (!checked.success) throw new BenchFileError(benchFileSentence(checked.issues));
  checkOrder(checked.output);
  return withDefaults(checked.output);
}

/** Is it a bench file at all? Asked before its version and its keys are judged. */
function benchFileIn(json: string): JsonObject {
  let value: unknown;
  try {
    value = JSON.parse(json);
  } catch (error) {
    throw new BenchFileError(jsonSyntaxSentence(json, error), { cause: error });
  }
  if (!isJsonObject(value))
    throw new BenchFileError(`the bench file must be an object, got ${quoted(value)}`);
  const { format } = value;
  if (format !== BENCH_FORMAT)
    throw new BenchFileError(
      format === undefined
        ? `this is no bench file: it lacks "format": "${BENCH_FORMAT}"`
        : `this is no bench file: its format is ${quoted(format)}, not "${BENCH_FORMAT}"`
    );
  return value;
}

/** What the rooms within refuse by a RangeError is refused by the file's own error, with the same sentence. */
function orBenchFileError<Result>(attempt: () => Result): Result {
  try {
    return attempt();
  } catch (error) {
    if (error instanceof RangeError) throw new BenchFileError(error.message, { cause: error });
    throw error;
  }
}

/** How many there are is asked first, so that a million wrong setups are not looked at one by one. */
function checkCounts({ speakers, setups }: JsonObject): void {
  const speakerCount = typeof speakers === 'object' && speakers ? Object.keys(speakers).length : 0;
  if (speakerCount > BENCH_FILE_LIMITS.speakers)
    throw new BenchFileError(`speakers must be at most ${BENCH_FILE_LIMITS.speakers}, got ${speakerCount}`);
  if (Array.isArray(setups) && !(setups.length >= 1 && setups.length <= BENCH_FILE_LIMITS.setups))
    throw new BenchFileError(`setups must be 1 … ${BENCH_FILE_LIMITS.setups}, got ${setups.length}`);
}

/** What one value says of another. */
function checkOrder({ setups, view, sound, model, trials, script, votes }: CheckedBenchFile): void {
  for (const [i, run] of trials?.entries() ?? []) {
    const problem = runProblem(run);
    if (problem) throw new BenchFileError(`trials[${i}]: ${problem}`);
  }
  for (const [i, round] of votes?.entries() ?? []) {
    const problem = roundProblem(round);
    if (problem) throw new BenchFileError(`votes[${i}]: ${problem}`);
  }
  for (const key of ['heard', 'measuredAgainst'] as const)
    if (view[key] >= setups.length)
      throw new BenchFileError(
        `view.${key} must be a place in setups, 0 … ${setups.length - 1}, got ${view[key]}`
      );
  checkSoundAt('sound', sound);
  model?.sounds.forEach((one, i) => checkSoundAt(`model.sounds[${i}]`, one));
  for (const [i, scene] of script?.entries() ?? []) {
    const problem = sceneProblem(scene);
    if (problem) throw new BenchFileError(`script[${i}] ${problem}`);
    if (scene.heard) checkSoundAt(`script[${i}].heard.sound`, scene.heard.sound);
  }
}

/** What the values of a sound say of one another. */
function checkSoundAt(where: string, sound: BenchSound): void {
  if (sound.kind !== 'recording') return checkKnobs(where, sound);
  const { from = 0, until } = sound;
  if (until !== undefined && until <= from)
    throw new BenchFileError(`${where}.until must be later than ${where}.from, ${from} s, got ${until}`);
}

/** What the knobs of a sound say of one another. */
function checkKnobs(where: string, sound: GeneratedSound): void {
  const problem = refusal(() => checkSound(sound));
  if (problem) throw new BenchFileError(`${where}: ${problem}`);
}
