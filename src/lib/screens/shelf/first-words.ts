import type { Stand } from '../../evaluation/stand.js';

/** What the first steps call the mount that is heard: the speaker is alone in free air only. */
export function firstWords({ setup }: Pick<Stand, 'setup'>): string {
  return setup.mount.kind === 'free'
    ? 'This is the speaker alone: thin.'
    : `This is the ${setup.name.toLowerCase()}.`;
}
