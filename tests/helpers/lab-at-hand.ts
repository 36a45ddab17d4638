import { Desk } from '../../src/lib/workers/sound/answer.js';
import { LabClient } from '../../src/lib/workers/sound/client.js';
import type { Asked } from '../../src/lib/workers/sound/protocol.js';

/** A client whose worker is no thread of its own: the same desk answers in the next turn of the loop. */
export function labAtHand(): { lab: LabClient; asked: () => number; kinds: string[] } {
  const kinds: string[] = [];
  const makeWorker = (): Worker => {
    const desk = new Desk();
    const worker = {
      onmessage: null as ((event: { data: unknown }) => void) | null,
      postMessage({ id, question }: Asked) {
        kinds.push(question.kind);
        setTimeout(() => {
          try {
            worker.onmessage?.({ data: { id, result: desk.answer(structuredClone(question)) } });
          } catch (error) {
            worker.onmessage?.({ data: { id, error: (error as Error).message } });
          }
        });
      },
      terminate: () => undefined
    };
    return worker as unknown as Worker;
  };
  return { lab: new LabClient(makeWorker), asked: () => kinds.length, kinds };
}
