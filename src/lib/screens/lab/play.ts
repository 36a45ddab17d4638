import type { Parts } from './command.js';

type Played = Pick<Parts, 'sounding' | 'dialogs'>;

/** Plays or stops; before the first sound the listener is asked for headphones. */
export function play({ sounding, dialogs }: Played): void {
  if (sounding.playing) sounding.stop();
  else if (dialogs.earsChecked) void sounding.play();
  else dialogs.earCheck = true;
}

/** Plays if nothing plays yet. */
export function start(parts: Played): void {
  if (!parts.sounding.playing) play(parts);
}
