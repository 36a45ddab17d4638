import type { Mount } from '../../acoustics/mounts/mount.js';

/** What a hall can be asked of any mounts; the first unless told. */
export const VOTE_QUESTIONS = [
  'Which sounds fullest?',
  'Which would you put into your engine?',
  'Which is clearest?'
] as const;

/** What can be asked of these mounts: where one of them alone is a box, also which one that is. */
export function voteQuestions(mounts: readonly Pick<Mount, 'kind'>[]): string[] {
  const boxes = mounts.filter(({ kind }) => kind === 'box').length;
  return [...VOTE_QUESTIONS, ...(boxes === 1 ? ['Which one is the box?'] : [])];
}
