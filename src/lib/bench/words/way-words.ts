import type { Metres } from '../../units.js';

/** How far the sound of the back has to go to meet that of the front; null where it cannot. */
export function wayWords(string: Metres | null, length: (metres: Metres) => string): string {
  return string === null ? 'closed: no way round' : `nearest way round: ${length(string)}`;
}
