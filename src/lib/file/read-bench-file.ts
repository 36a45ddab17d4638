import * as v from 'valibot';
import { checkSound } from '../sounds/check-sound.js';
import { refusal } from '../acoustics/refusal.js';
import { withDefaults } from './bench-defaults.js';
import { BenchFileError } from './bench-file-error.js';
import { BENCH_FILE_LIMITS } from './bench-file-limits.js';
import { benchFileSchema, type CheckedBenchFile } from './bench-file-schema.js';
import { benchFileSentence } from './bench-file-sentence.js';
import { BENCH_FORMAT, BENCH_VERSION, type BenchFile } from './bench-file.js';
import { jsonSyntaxSentence } from './json/json-syntax-sentence.js';
import { quoted } from './json/quoted.js';
import { scanJson } from './json/scan-json.js';

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
  scanJson(json);
  let value: unknown;
  try {
    value = JSON.parse(json);
  } catch (error) {
    throw new BenchFileError(jsonSyntaxSentence(json, error), { cause: error });
  }
  checkKind(value);
  checkCounts(value);
  const checked = v.safeParse(benchFileSchema, value);
  if (!checked.success) throw new BenchFileError(benchFileSentence(checked.issues));
  checkOrder(checked.output);
  return withDefaults(checked.output);
}

/** Is it a bench file at all, and of a version that this program knows? Asked before its keys are judged. */
function checkKind(value: unknown): asserts value is Record<string, unknown> {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new BenchFileError(`the bench file must be an object, got ${quoted(value)}`);
  const { format, version } = value as Record<string, unknown>;
  if (format !== BENCH_FORMAT)
    throw new BenchFileError(
      format === undefined
        ? `this is no bench file: it lacks "format": "${BENCH_FORMAT}"`
        : `this is no bench file: its format is ${quoted(format)}, not "${BENCH_FORMAT}"`
    );
  if (version === BENCH_VERSION) return;
  if (version === undefined)
    throw new BenchFileError(
      `this bench file does not say its version; this program reads version ${BENCH_VERSION}`
    );
  throw new BenchFileError(
    `this bench file is of version ${quoted(version)}; this program reads version ${BENCH_VERSION}`
  );
}

/** How many there are is asked first, so that a million wrong setups are not looked at one by one. */
function checkCounts({ speakers, setups }: Record<string, unknown>): void {
  const speakerCount = typeof speakers === 'object' && speakers ? Object.keys(speakers).length : 0;
  if (speakerCount > BENCH_FILE_LIMITS.speakers)
    throw new BenchFileError(`speakers must be at most ${BENCH_FILE_LIMITS.speakers}, got ${speakerCount}`);
  if (Array.isArray(setups) && !(setups.length >= 1 && setups.length <= BENCH_FILE_LIMITS.setups))
    throw new BenchFileError(`setups must be 1 … ${BENCH_FILE_LIMITS.setups}, got ${setups.length}`);
}

/** What one value says of another. */
function checkOrder({ setups, view, sound }: CheckedBenchFile): void {
  for (const key of ['heard', 'measuredAgainst'] as const)
    if (view[key] >= setups.length)
      throw new BenchFileError(
        `view.${key} must be a place in setups, 0 … ${setups.length - 1}, got ${view[key]}`
      );
  if (sound.kind !== 'recording' && sound.kind !== 'engine') {
    // What the knobs say of one another.
    const problem = refusal(() => checkSound(sound));
    if (problem) throw new BenchFileError(`sound: ${problem}`);
  }
  if (sound.kind !== 'recording' || sound.until === undefined) return;
  const from = sound.from ?? 0;
  if (sound.until <= from)
    throw new BenchFileError(`sound.until must be later than sound.from, ${from} s, got ${sound.until}`);
}
