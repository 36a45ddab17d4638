import type { Listener } from '../acoustics/listener.js';
import type { Hertz } from '../units.js';
import type { BenchSound, ModelName, Setup } from './bench-file.js';

/** What the hall sees of a scene: curves, the waves of a tone or of one push of the cone, or words alone. */
export const SCENE_SHOWS = ['curves', 'tone', 'puff', 'text'] as const;
export type SceneShows = (typeof SCENE_SHOWS)[number];

/** What is heard in a scene, as it was when the scene was kept: whatever the bench becomes, the scene stays. */
export interface SceneHeard {
  /** The mount, with the speaker of its key in the bench. */
  setup: Setup;
  /** With its lever, where it has one. */
  sound: BenchSound;
  /** In the hand, or on the layout. */
  listener: Listener;
  model: ModelName;
  sameLoudness: boolean;
}

/** One step of what a presenter shows to a hall. */
export interface Scene {
  /** For the presenter; the hall does not see it. */
  name: string;
  /** How long it is to take. */
  minutes: number;
  shows: SceneShows;
  /** Nothing in a scene of words: there the sound of the scene before it goes on. */
  heard?: SceneHeard;
  /** Of the tone whose waves are shown. */
  frequency?: Hertz;
  /** The words of a scene that shows nothing else, a line each. */
  text?: string;
  /** The presenter's own words, which the hall does not see. */
  notes: string;
}

/** What one value of a scene says of another; the end of a sentence where it cannot be, null where it can. */
export function sceneProblem({
  shows,
  heard,
  text
}: Pick<Scene, 'shows' | 'text'> & { heard?: unknown }): string | null {
  if (shows === 'text') return text?.trim() ? null : 'must have a text, since it shows nothing else';
  return heard ? null : 'must say what is heard';
}
