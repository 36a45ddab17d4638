import type { Metres } from '../../../units.js';

/** How far the sound of the back has to go to the middle of the front; null where it cannot. */
export function wayWords(string: Metres | null, length: (metres: Metres) => string): string {
  return string === null ? 'closed: the back cannot come round' : `nearest way round: ${length(string)}`;
}

/** The same for a hall, with what makes it matter. */
export function hallWay(string: Metres | null, length: (metres: Metres) => string): string {
  return string === null
    ? 'closed: the back cannot come round'
    : `the back starts opposite; its way round: ${length(string).replace(' ', '\u00a0')}`;
}
