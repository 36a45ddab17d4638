import type { Mount } from './mounts/mount.js';
import type { Speaker } from './speaker/speaker.js';

/** One speaker in one mount: what every model takes. `turn` 90 lays the speaker's length across the mount. */
export interface Installation {
  speaker: Speaker;
  mount: Mount;
  turn: 0 | 90;
}
