import type { Refusal } from './refusal.svelte.js';

/** When what was typed makes room for the figure as it is written here: what is accepted, what is refused, or both. */
export type Rewritten = 'accepted' | 'refused' | 'always';

/** What a field for a quantity does with what was typed. */
export interface Entering {
  /** Takes what was typed; returns one sentence where it is refused. */
  enter: (typed: string) => string | null;
  /** The quantity as it is written in the field, after it was entered. */
  figure: () => string;
  rewritten: Rewritten;
  refusal: Refusal;
}

/**
 * Enters what stands in a field and leaves there what its panel wants to be seen; returns whether it was accepted. `drawn` draws at once what follows of it:
 * a page that was delivered with its fields writes each of them anew with its first drawing, refused or not.
 */
export function enterTyped(
  field: { value: string },
  { enter, figure, rewritten, refusal }: Entering,
  drawn: () => void
): boolean {
  const typed = field.value;
  const accepted = refusal.take(enter(typed));
  if (!accepted && rewritten === 'accepted') {
    drawn();
    field.value = typed;
  } else if (!accepted || rewritten !== 'refused') field.value = figure();
  return accepted;
}
