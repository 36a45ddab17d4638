import type { Metres } from '../../units.js';

/** How far the sound of the back has to go to the middle of the front; null where it cannot. */
export function wayWords(
  string: Metres | null,
  length: (metres: Metres) => string,
  whose = 'nearest'
): string {
  return string === null ? 'closed: no way round' : `${whose} way round: ${length(string)}`;
}
