import type { BenchFile } from '../../file/bench-file.js';
import { readBenchFile } from '../../file/read-bench-file.js';
import { writeBenchFile } from '../../file/write-bench-file.js';

/** The text of a bench without which mount is heard: listening is not work. */
export function workIn(file: BenchFile): string {
  return writeBenchFile({ ...file, view: { ...file.view, heard: 0 } });
}

/** Whether two texts hold the same work; a text that cannot be read is only the same as itself. */
export function sameWork(a: string, b: string): boolean {
  if (a === b) return true;
  try {
    return workIn(readBenchFile(a)) === workIn(readBenchFile(b));
  } catch {
    return false;
  }
}
