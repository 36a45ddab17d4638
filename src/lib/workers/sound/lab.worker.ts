import { Desk } from './answer.js';
import type { Answered, Asked } from './protocol.js';

/** The worker's entry: every question gets an answer, if only an error. */
const desk = new Desk();

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  const { answered, transfer } = answerTo(data);
  (postMessage as (message: Answered, transfer: Transferable[]) => void)(answered, transfer);
});

function answerTo({ id, question }: Asked): { answered: Answered; transfer: Transferable[] } {
  try {
    const result = desk.answer(question);
    return { answered: { id, result }, transfer: samplesOf(result) };
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    return { answered: { id, error: message }, transfer: [] };
  }
}

/** The samples of an answer move to the page instead of being copied. */
function samplesOf(result: unknown): Transferable[] {
  if (result instanceof Float32Array) return [result.buffer];
  const { samples } = (result ?? {}) as { samples?: unknown };
  return samples instanceof Float32Array ? [samples.buffer] : [];
}
