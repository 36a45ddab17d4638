import type { Mount } from './mount.js';
import type { Speaker } from './speaker.js';

/** One speaker in one mount: what every model takes. `turn` 90 lays the speaker's length across the mount. */
export interface Installation {
  speaker: Speaker;
  mount: Mount;
  turn: 0 | 90;
}
