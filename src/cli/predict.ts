import { BenchFileError } from '../lib/file/bench-file-error.js';
import { fitNow } from '../lib/evaluation/fit/fit-now.js';
import { predictBench } from '../lib/evaluation/prediction.js';
import { fitCsv } from '../lib/export/fit-csv.js';
import { predictionCsv } from '../lib/export/prediction-csv.js';
import type { BenchFile } from '../lib/file/bench-file.js';
import { readBenchFile } from '../lib/file/read-bench-file.js';
import { predictHelp, predictRequest } from './predict-request.js';
import { readInput } from './read-input.js';
import { Refusal } from './refusal.mjs';

/**
 * The whole of `predict`: arguments in, what stdout gets out.
 * @throws Refusal with one sentence
 */
export async function predict(args: string[]): Promise<string> {
  const request = predictRequest(args);
  if (!request) return predictHelp;
  const bench = benchOf(await readInput(request.file));
  const csv = request.format === 'csv';
  if (request.fitBy !== null) {
    const { fitBy: by, everySize, accuracy, drive } = request;
    const fitted = await orRefusal(() => fitNow(bench, { by, everySize, accuracy, drive }));
    return csv ? fitCsv(fitted) : `${JSON.stringify(fitted)}\n`;
  }
  const prediction = await orRefusal(() => predictBench(bench, request));
  return csv ? predictionCsv(prediction) : `${JSON.stringify(prediction)}\n`;
}

function benchOf(text: string): BenchFile {
  try {
    return readBenchFile(text);
  } catch (error) {
    if (error instanceof BenchFileError) throw new Refusal(error.message);
    throw error;
  }
}

/** A RangeError of the models is a sentence for the user. */
async function orRefusal<Result>(attempt: () => Result | Promise<Result>): Promise<Result> {
  try {
    return await attempt();
  } catch (error) {
    if (error instanceof RangeError) throw new Refusal(error.message);
    throw error;
  }
}
