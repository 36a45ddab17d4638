import type { Board } from './mounts/board.js';
import type { Mount } from './mounts/mount.js';
import type { Second } from './mounts/second.js';
import type { Speaker } from './speaker/speaker.js';

/**
 * One speaker in one mount, or two of a kind: what every model takes. `turn` 90 lays the speaker's length across the mount. Without a board it is held
 * in the hand, in a free field.
 */
export interface Installation {
  speaker: Speaker;
  mount: Mount;
  turn: 0 | 90;
  board?: Board;
  second?: Second;
}
