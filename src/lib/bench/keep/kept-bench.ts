/** A bench as it lies in the browser's store: text of a bench file, never a live value. */
export interface KeptBench {
  id: string;
  name: string;
  /** What `writeBenchFile` made of it; what a newer or broken program left here is kept as it is. */
  text: string;
  /** Another one with every write, so that a tab sees when somebody else has written. */
  stamp: string;
  /** When it was written, in milliseconds since 1970. */
  keptAt: number;
}

/** Whether what lies in the store has the shape of a kept bench; its text may still be no bench. */
export function isKeptBench(value: unknown): value is KeptBench {
  if (typeof value !== 'object' || value === null) return false;
  const { id, name, text, stamp, keptAt } = value as Record<string, unknown>;
  return [id, name, text, stamp].every((part) => typeof part === 'string') && typeof keptAt === 'number';
}

/** A mark that no other tab has ever made: 96 random bits. Works without a secure context, too. */
export function newStamp(): string {
  const parts = crypto.getRandomValues(new Uint32Array(3));
  return Array.from(parts, (part) => part.toString(36).padStart(7, '0')).join('');
}
