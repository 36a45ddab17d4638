import type { VersionStep } from './version-step.js';

/**
 * Version 4 can say what of a mount lets air through or stands in its way: leak, chassis, grille, body. A mount of version 3 has none of
 * it, as one of version 4 that says nothing. The number keeps an older program from reading a mount whose openings it would leave out.
 */
export const OPENINGS_TOLD: VersionStep = {
  from: 3,
  to: 4,
  raise: (file) => file
};
