import type { FileHandle } from './bench-disk.js';
import { DEMO_NAME } from './bench-name.js';
import { newStamp, type KeptBench } from './kept-bench.js';

/**
 * What this tab knows of one bench's place in the store. The states of a bench that undo leads back to share one of
 * these, so that the name always belongs to what is on the bench.
 */
export interface Keeping {
  id: string;
  name: string;
  /** What this tab has last read or written; null where nothing of it is in the store. */
  stamp: string | null;
  /** The stamp of a write that is under way or whose end is not known. */
  trying: string | null;
  /** The text and the name under that stamp. */
  text: string | null;
  keptName: string | null;
  /** A demo bench as it comes: it gets a name and a place with the first change. */
  demo: boolean;
  /** What another tab has written in between; nothing is written until the user has chosen. */
  overtaken: KeptBench | null;
  /** The file on disk that "save" writes to, where the browser allows it. */
  handle: FileHandle | null;
}

/** A bench that is not in the store yet. */
export function newKeeping(name: string, handle: FileHandle | null = null): Keeping {
  return {
    id: newStamp(),
    name,
    stamp: null,
    trying: null,
    text: null,
    keptName: null,
    demo: false,
    overtaken: null,
    handle
  };
}

/** What this tab knows of a bench that it has just read from the store. */
export function keepingOf(kept: KeptBench): Keeping {
  const keeping = { ...newKeeping(kept.name), id: kept.id };
  adopt(keeping, kept);
  return keeping;
}

export function demoKeeping(name = DEMO_NAME): Keeping {
  return { ...newKeeping(name), demo: true };
}

/** The stamps that this tab knows of. */
export function knownStamps({ stamp, trying }: Keeping): string[] {
  return [stamp, trying].filter((one) => one !== null);
}

/** From now on this tab knows what the store holds. */
export function adopt(keeping: Keeping, { name, text, stamp }: KeptBench): void {
  // A name that was changed here and is not kept yet stays.
  if (keeping.keptName === null || keeping.name === keeping.keptName) keeping.name = name;
  Object.assign(keeping, { text, stamp, trying: null, keptName: name, demo: false, overtaken: null });
}

/** Nothing of it is in the store (any more). */
export function disown(keeping: Keeping): void {
  Object.assign(keeping, { stamp: null, trying: null, text: null, keptName: null, overtaken: null });
}
