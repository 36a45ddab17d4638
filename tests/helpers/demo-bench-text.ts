import { readFileSync } from 'node:fs';
import path from 'node:path';

/** Five mounts of one speaker: the example of docs/file-format.md. */
export const demoBenchPath = path.join(import.meta.dirname, '../reference/demo-bench.json');

/** The demo bench file, changed: `change` gets its parsed value. */
export function demoBenchText(change: (bench: Loose) => void = () => undefined): string {
  const bench = JSON.parse(readFileSync(demoBenchPath, 'utf8')) as Loose;
  change(bench);
  return JSON.stringify(bench);
}

/** A bench file as loosely as a hostile or careless hand might write it. */
export interface Loose {
  [key: string]: unknown;
  air: Record<string, unknown>;
  speakers: Record<string, Record<string, unknown>>;
  setups: { [key: string]: unknown; mount: Record<string, unknown> }[];
  listener: Record<string, unknown>;
}
