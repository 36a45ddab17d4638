import { type MovingSound, movingKind } from '../../sounds/kinds.js';
import { dieselRpm } from '../../sounds/diesel/diesel.js';
import { speedWords } from './speed-words.js';

/** What stands beside the lever: how fast the machine runs, and how often it beats. */
export function leverWords(sound: MovingSound, inches: boolean): { speed: string; pulses: string } {
  const speed =
    sound.kind === 'diesel'
      ? `${Math.round(dieselRpm(sound))} rpm`
      : speedWords((sound.topSpeed * sound.notch) / 8, inches);
  const [first] = movingKind(sound).marks(sound);
  if (!first || !(first.frequency > 0)) return { speed, pulses: 'it stands' };
  const often = first.frequency < 10 ? first.frequency.toFixed(1) : String(Math.round(first.frequency));
  return { speed, pulses: `${PULSES[sound.kind]} ${often} times a second` };
}

const PULSES = { diesel: 'fires', steam: 'beats', electric: 'its tone swings' };
