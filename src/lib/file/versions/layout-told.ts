import type { VersionStep } from './version-step.js';

/**
 * Version 3 can say that a bench stands on a layout: the board, and how a mount stands over it. A file of version 2 says nothing of it
 * and means the hand, as one of version 3 that says nothing does. The number keeps an older program from reading a board that it
 * would leave out.
 */
export const LAYOUT_TOLD: VersionStep = {
  from: 2,
  to: 3,
  raise: (file) => file
};
