import { checkWithin } from '../../acoustics/limits.js';
import { BENCH_FILE_LIMITS } from '../../file/bench-file-limits.js';
import type { BenchFile } from '../../file/bench-file.js';
import { type Scene, sceneProblem } from '../../file/scene.js';

/**
 * The bench with scenes put into its script at a place.
 *
 * @throws RangeError with one sentence where it would hold more than `BENCH_FILE_LIMITS.scenes`
 */
export function withScenes(file: BenchFile, scenes: readonly Scene[], at: number): BenchFile {
  const script = (file.script ?? []).toSpliced(at, 0, ...scenes);
  if (script.length > BENCH_FILE_LIMITS.scenes)
    throw new RangeError(`a script holds ${BENCH_FILE_LIMITS.scenes} scenes: delete one first`);
  return { ...file, script };
}

/**
 * The bench with one scene of its script changed.
 *
 * @throws RangeError with one sentence where such a scene cannot be
 */
export function withSceneChanged(file: BenchFile, at: number, change: Partial<Scene>): BenchFile {
  const script = file.script ?? [];
  const scene = { ...script[at], ...change };
  if (scene.frequency === undefined) delete scene.frequency;
  checkScene(scene);
  return { ...file, script: script.with(at, scene) };
}

/** Whatever a hand may type of a scene; the file's own limits. */
function checkScene({ name, minutes, frequency, text = '', notes, ...rest }: Scene): void {
  if (!name.trim()) throw new RangeError('a scene needs a name');
  checkWithin('the time of a scene', minutes, BENCH_FILE_LIMITS.sceneMinutes, 'minutes');
  if (frequency !== undefined) checkWithin('the tone', frequency, BENCH_FILE_LIMITS.sceneFrequency, 'Hz');
  const lines = text.split('\n').length;
  if (lines > BENCH_FILE_LIMITS.sceneLines)
    throw new RangeError(`the hall reads at most ${BENCH_FILE_LIMITS.sceneLines} lines, got ${lines}`);
  for (const [what, typed, most] of [
    ['name', name, BENCH_FILE_LIMITS.name],
    ['text', text, BENCH_FILE_LIMITS.sceneText],
    ['words', notes, BENCH_FILE_LIMITS.notes]
  ] as const)
    if (typed.length > most)
      throw new RangeError(`the ${what} of a scene may have ${most} signs, got ${typed.length}`);
  const problem = sceneProblem({ ...rest, text });
  if (problem) throw new RangeError(`a scene ${problem}`);
}

/** The bench with one scene of its script at another place. */
export function withSceneMoved(file: BenchFile, from: number, to: number): BenchFile {
  const script = file.script ?? [];
  return { ...file, script: script.toSpliced(from, 1).toSpliced(to, 0, script[from]) };
}

/** The bench without one scene; without the last of them it has no script. */
export function withoutScene(file: BenchFile, at: number): BenchFile {
  const script = (file.script ?? []).toSpliced(at, 1);
  const without: BenchFile = { ...file, script };
  if (script.length === 0) delete without.script;
  return without;
}
