import { readBenchFile } from '../../file/read-bench-file.js';
import { sentence } from '../../format/sentence.js';
import type { KeptBench } from './kept-bench.js';

/** One bench of the list; `problem` says why it cannot be opened. */
export interface Listed {
  id: string;
  name: string;
  keptAt: number;
  problem: string | null;
}

export function listed({ id, name, keptAt, text }: KeptBench): Listed {
  return { id, name, keptAt, problem: problemOf(text) };
}

function problemOf(text: string): string | null {
  try {
    readBenchFile(text);
    return null;
  } catch (error) {
    return sentence(error);
  }
}
