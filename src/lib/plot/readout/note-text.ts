import type { Note } from './note-box.js';

/** A note as one sentence for those who listen to it. */
export function noteText({ title, rows, end }: Note): string {
  const parts = rows.map(({ name, value }) => `${name} ${value}`);
  return `${title}: ${[...parts, ...(end ? [end] : [])].join('; ')}`;
}
