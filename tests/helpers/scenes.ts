import type { BenchFile, Setup } from '../../src/lib/file/bench-file.js';
import type { Scene, SceneHeard } from '../../src/lib/file/scene.js';

/** A scene of words. */
export const words = (text: string, more: Partial<Scene> = {}): Scene => ({
  name: text.split('\n')[0],
  minutes: 1,
  shows: 'text',
  text,
  notes: '',
  ...more
});

/** A scene of one of the bench's mounts, as the bench stands. */
export function sceneOf(
  { setups, sound, listener, view }: BenchFile,
  place: number,
  { heard, ...more }: Omit<Partial<Scene>, 'heard'> & { heard?: Partial<SceneHeard> } = {}
): Scene {
  const setup: Setup = setups[place];
  const { model, sameLoudness } = view;
  return {
    name: setup.name,
    minutes: 1,
    shows: 'curves',
    heard: { setup, sound, listener, model, sameLoudness, ...heard },
    notes: '',
    ...more
  };
}
