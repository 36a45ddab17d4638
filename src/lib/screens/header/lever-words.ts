import { type MovingSound, movingKind } from '../../sounds/kinds.js';
import { FULL_NOTCH } from '../../sounds/driving.js';
import { dieselRpm } from '../../sounds/diesel/diesel.js';
import { speedWords } from '../../format/speed-words.js';

/** What stands beside the lever: how fast the machine runs, and how often it beats. */
export function leverWords(sound: MovingSound, inches: boolean): { speed: string; pulses: string } {
  const speed =
    sound.kind === 'diesel'
      ? `${Math.round(dieselRpm(sound))} rpm`
      : speedWords((sound.topSpeed * sound.notch) / FULL_NOTCH, inches);
  const { name, words } = PULSES[sound.kind];
  const first = movingKind(sound)
    .marks(sound)
    .find((mark) => mark.name === name);
  if (!first || !(first.frequency > 0)) return { speed, pulses: 'it stands' };
  const often = first.frequency < 10 ? first.frequency.toFixed(1) : String(Math.round(first.frequency));
  return { speed, pulses: `${words} ${often} times a second` };
}

/** Which of its rates is told, and how. */
const PULSES = {
  diesel: { name: 'firing rate', words: 'fires' },
  steam: { name: 'beat', words: 'beats' },
  electric: { name: 'gear mesh', words: 'gears mesh' }
};
