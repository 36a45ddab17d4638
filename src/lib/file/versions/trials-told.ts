import type { VersionStep } from './version-step.js';

/** Version 6 keeps blind trials. A file of version 5 has none; the number keeps an older program from losing those of a newer one. */
export const TRIALS_TOLD: VersionStep = {
  from: 5,
  to: 6,
  raise: (file) => file
};
