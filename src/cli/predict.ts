import { BenchFileError } from '../lib/file/bench-file-error.js';
import { type Prediction, predictBench } from '../lib/evaluation/prediction.js';
import { predictionCsv } from '../lib/export/prediction-csv.js';
import type { BenchFile } from '../lib/file/bench-file.js';
import { readBenchFile } from '../lib/file/read-bench-file.js';
import { predictHelp, type PredictRequest, predictRequest } from './predict-request.js';
import { readInput } from './read-input.js';
import { Refusal } from './refusal.mjs';

/**
 * The whole of `predict`: arguments in, what stdout gets out.
 * @throws Refusal with one sentence
 */
export async function predict(args: string[]): Promise<string> {
  const request = predictRequest(args);
  if (!request) return predictHelp;
  const prediction = predictionOf(benchOf(await readInput(request.file)), request);
  return request.format === 'csv' ? predictionCsv(prediction) : `${JSON.stringify(prediction)}\n`;
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
function predictionOf(bench: BenchFile, request: PredictRequest): Prediction {
  try {
    return predictBench(bench, request);
  } catch (error) {
    if (error instanceof RangeError) throw new Refusal(error.message);
    throw error;
  }
}
