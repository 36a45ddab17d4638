import type { KeyValue } from './bench-store.js';

/** Recordings up to this size are kept with their bench, in bytes: some minutes of sound. */
export const MAX_KEPT_BYTES = 20e6;

/** A recording's file as it lies in the store. */
interface KeptFile {
  name: string;
  type: string;
  bytes: ArrayBuffer;
}

function isKeptFile(value: unknown): value is KeptFile {
  if (typeof value !== 'object' || value === null) return false;
  const { name, type, bytes } = value as Record<string, unknown>;
  return typeof name === 'string' && typeof type === 'string' && bytes instanceof ArrayBuffer;
}

/** The files of recordings, one a bench, by the bench's id; in a store of their own, which nobody reads as a whole. */
export class KeptRecordings {
  #backend: KeyValue;

  constructor(backend: KeyValue) {
    this.#backend = backend;
  }

  /** Keeps a file in the place of what was kept with that bench. */
  async keep(id: string, file: File): Promise<void> {
    const bytes = await file.arrayBuffer();
    const kept: KeptFile = { name: file.name, type: file.type, bytes };
    await this.#backend.update(id, () => kept);
  }

  /** The file that is kept with a bench; null where there is none. */
  async read(id: string): Promise<File | null> {
    const kept = await this.#backend.get(id);
    return isKeptFile(kept) ? new File([kept.bytes], kept.name, { type: kept.type }) : null;
  }

  async remove(id: string): Promise<void> {
    await this.#backend.del(id);
  }
}
