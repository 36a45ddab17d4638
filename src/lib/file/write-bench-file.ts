import { BENCH_FILE_LIMITS } from './bench-file-limits.js';
import { BenchFileError } from './bench-file-error.js';
import { benchFileSchema } from './bench-file-schema.js';
import { BENCH_FORMAT, type BenchFile } from './bench-file.js';
import { inSchemaOrder } from './in-schema-order.js';
import { readBenchFile } from './read-bench-file.js';
import { BENCH_VERSION } from './versions/versions.js';

/**
 * Writes a bench file: readable, always with the keys in the same order whatever order the value has, so
 * that equal benches make equal text. What comes out is read back first: a file that this program could
 * not open again is never written.
 * @throws BenchFileError with one sentence where the value is no valid bench.
 */
export function writeBenchFile(bench: BenchFile): string {
  const newest = { ...bench, format: BENCH_FORMAT, version: BENCH_VERSION };
  const text = `${JSON.stringify(inSchemaOrder(benchFileSchema, newest), null, 2)}\n`;
  if (text.length > BENCH_FILE_LIMITS.characters)
    throw new BenchFileError(`this bench is too large to be saved: ${text.length} characters`);
  readBenchFile(text);
  return text;
}
