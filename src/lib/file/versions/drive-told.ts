import type { VersionStep } from './version-step.js';

/**
 * Version 5 can say a second speaker in a mount, how hard all are driven, and by what amplifier. A file of version 4 says nothing of it and
 * means one speaker at no stated drive. The number keeps an older program from reading two speakers as one.
 */
export const DRIVE_TOLD: VersionStep = {
  from: 4,
  to: 5,
  raise: (file) => file
};
