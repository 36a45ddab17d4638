import { freeName } from './bench-name.js';
import type { BenchStore } from './bench-store.js';
import type { LastBreath } from './last-breath.js';
import { newStamp } from './new-stamp.js';
import { sameWork } from './same-work.js';

/**
 * Brings into the store what tabs have left behind when they were closed. What another tab has overtaken gets a
 * name of its own.
 * @returns the names of those that got one.
 */
export async function carryOver(store: BenchStore, breath: LastBreath): Promise<string[]> {
  const renamed: string[] = [];
  for (const [key, left] of breath.found()) {
    const theirs = await store.write(left, left.known);
    if (theirs && !sameWork(theirs.text, left.text)) {
      const taken = (await store.list()).map((kept) => kept.name);
      const name = freeName(left.name, taken);
      await store.write({ id: newStamp(), name, text: left.text });
      renamed.push(name);
    } else if (left.known.length === 0) await store.setLast(left.id);
    breath.forget(key);
  }
  return renamed;
}
