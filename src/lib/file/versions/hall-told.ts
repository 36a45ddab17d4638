import type { VersionStep } from './version-step.js';

/**
 * Version 7 can hold what is shown to a hall, and keeps what the hall voted. A file of version 6 says nothing of it; the number keeps an older
 * program from losing the script and the rounds of a newer one.
 */
export const HALL_TOLD: VersionStep = {
  from: 6,
  to: 7,
  raise: (file) => file
};
