import type { VersionStep } from './version-step.js';

/**
 * Version 8 can have the cone of a box off the middle of its front. In a file of version 7 it is in the middle; the number keeps an older program
 * from putting it back there.
 */
export const OFF_MIDDLE_TOLD: VersionStep = {
  from: 7,
  to: 8,
  raise: (file) => file
};
