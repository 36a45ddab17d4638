import type { Missing } from '../../bench/script/scene-bench.js';
import type { Scene, SceneShows } from '../../file/scene.js';
import { clockTime } from '../../format/clock-time.js';
import { frequencyWords } from '../../format/frequency-words.js';
import type { Seconds } from '../../units.js';

/** What the hall sees, as one chooses it. */
export const SHOWS_WORDS: Record<SceneShows, string> = {
  curves: 'the curves',
  tone: 'the waves of a tone',
  puff: 'one push of the cone',
  text: 'words alone'
};

/** What the hall sees and where one listens, in a few words. */
export function shownWords({ shows, frequency, heard }: Scene): string {
  if (shows === 'text' && !heard) return 'words';
  const what =
    shows === 'tone' && frequency
      ? `a tone, ${frequencyWords(frequency)}`
      : { ...SHOWS_WORDS, text: 'words', curves: 'curves' }[shows];
  return heard?.listener.board ? `${what}; on the layout` : what;
}

/** What is told of a scene of which something is gone, one sentence each. */
export function missingWords(scene: Scene, missing: readonly Missing[]): string[] {
  const { setup, sound } = scene.heard ?? {};
  const words: Record<Missing, string> = {
    speaker: `The speaker of “${setup?.name}” is not on this bench any more: what was heard before goes on.`,
    recording: `The recording “${sound?.name}” is not open: the sound from before goes on.`
  };
  return missing.map((one) => words[one]);
}

/** How the time stands against the plan: the present scene is to be over at `due`, and was to begin at `from`. */
export function planWords(whole: Seconds, from: Seconds, due: Seconds): string {
  if (whole > due) return `${clockTime(whole - due)} behind the plan`;
  if (whole < from) return `${clockTime(from - whole)} ahead of the plan`;
  return 'as planned';
}
