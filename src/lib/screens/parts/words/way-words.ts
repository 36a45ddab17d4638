import type { Mount } from '../../../acoustics/mounts/mount.js';
import type { Metres } from '../../../units.js';

/** How far the sound of the back has to go to the middle of the front, or what keeps it in. */
export function wayWords(string: Metres | null, mount: Mount, length: (metres: Metres) => string): string {
  return string === null ? shutWords(mount) : `nearest way round: ${length(string)}`;
}

/** The same for a hall, with what makes it matter. */
export function hallWay(string: Metres | null, mount: Mount, length: (metres: Metres) => string): string {
  return string === null
    ? shutWords(mount)
    : `the back starts opposite; its way round: ${length(string).replace(' ', '\u00a0')}`;
}

function shutWords({ chassis, leak }: Mount): string {
  if (chassis) return 'the back comes out by the slits alone';
  return leak ? 'the back comes out by the leak' : 'closed: the back cannot come round';
}

/** The same in a word or two, for the shelf. */
export function shortWay(
  string: Metres | null,
  { chassis, leak }: Mount,
  length: (metres: Metres) => string
): string {
  if (string !== null) return length(string);
  if (chassis) return 'by slits';
  return leak ? 'leaks' : 'closed';
}
