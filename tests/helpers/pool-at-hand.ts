import type { AskWavesOptions, WavePool } from '../../src/lib/workers/waves/wave-pool.js';
import type { WaveQuestion } from '../../src/lib/workers/waves/wave-protocol.js';

/** One question that a test has yet to answer. */
export interface PoolQuestion {
  question: WaveQuestion;
  options: AskWavesOptions;
  answer: (result: unknown) => Promise<void>;
  refuse: (error: Error) => Promise<void>;
}

/** A pool of workers whose answers the test gives. Aborted questions leave the list. */
export function poolAtHand(): { pool: WavePool; open: PoolQuestion[]; asked: WaveQuestion[] } {
  const open: PoolQuestion[] = [];
  const asked: WaveQuestion[] = [];
  const settled = () => new Promise<void>((resolve) => setTimeout(resolve));
  const pool = {
    ask: (question: WaveQuestion, options: AskWavesOptions = {}) =>
      new Promise((resolve, reject) => {
        const leave = (then: () => void) => {
          open.splice(open.indexOf(one), 1);
          then();
          return settled();
        };
        const one: PoolQuestion = {
          question,
          options,
          answer: (result) => leave(() => resolve(result)),
          refuse: (error) => leave(() => reject(error))
        };
        open.push(one);
        asked.push(question);
        options.signal?.addEventListener('abort', () => void leave(() => reject(options.signal!.reason)));
      }),
    warmUp: () => undefined,
    close: () => undefined
  };
  return { pool: pool as unknown as WavePool, open, asked };
}
