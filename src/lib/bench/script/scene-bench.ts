import type { BenchFile, BenchSound, Setup } from '../../file/bench-file.js';
import type { Scene, SceneHeard } from '../../file/scene.js';
import { MAX_SETUPS } from '../bench.svelte.js';

/** What of a scene there is no more: the speaker of its mount, or the file of its recording. */
export type Missing = 'speaker' | 'recording';

/** What decides how a scene is shown. */
export interface SceneWays {
  /** Whether a sound can be heard: the file of a recording may not be open. */
  isOpen: (sound: BenchSound) => boolean;
  /** The same value for equal ones, so that nothing is worked out or faded to anew for a copy. */
  same: <T>(value: T) => T;
}

/** What of a scene there is no more. */
export function missingOf(
  { heard }: Scene,
  { speakers }: BenchFile,
  { isOpen }: Pick<SceneWays, 'isOpen'>
): Missing[] {
  if (!heard) return [];
  return [
    ...(Object.hasOwn(speakers, heard.setup.speaker) ? [] : ['speaker' as const]),
    ...(isOpen(heard.sound) ? [] : ['recording' as const])
  ];
}

/**
 * The bench as a scene of its script shows it: its mount in the place of the one of its name, or beside the others. What a scene does not
 * say, as one of words, and what there is no more of it, is that of the scene before, and before the first that of the bench.
 */
export function sceneBench(work: BenchFile, at: number, { isOpen, same }: SceneWays): BenchFile {
  const before = (work.script ?? []).slice(0, at + 1).reverse();
  const last = before.find(({ heard }) => heard)?.heard;
  if (!last) return work;
  const find = (fits: (scene: Scene) => boolean): SceneHeard | undefined =>
    before.find((scene) => scene.heard && fits(scene))?.heard;
  const mounted = find((scene) => !missingOf(scene, work, { isOpen }).includes('speaker'));
  const sounding = find(({ heard }) => isOpen(heard!.sound));
  const bench = mounted ? withMount(work, same(mounted.setup)) : work;
  return {
    ...bench,
    sound: same(sounding?.sound ?? work.sound),
    listener: same(last.listener),
    view: { ...bench.view, model: last.model, sameLoudness: last.sameLoudness }
  };
}

/** The bench that hears a mount which it may have already, as it is or by its name. */
function withMount(work: BenchFile, setup: Setup): BenchFile {
  const { setups, view } = work;
  const own = setups.indexOf(setup);
  const named = own >= 0 ? own : setups.findIndex(({ name }) => name === setup.name);
  const free =
    setups.length < MAX_SETUPS ? setups.length : view.measuredAgainst === MAX_SETUPS - 1 ? 0 : MAX_SETUPS - 1;
  const heard = named >= 0 ? named : free;
  return {
    ...work,
    setups: heard === setups.length ? [...setups, setup] : setups.with(heard, setup),
    view: { ...view, heard }
  };
}
