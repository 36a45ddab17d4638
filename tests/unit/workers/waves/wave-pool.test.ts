import { describe, expect, test, vi } from 'vitest';
import type { WaveQuestion } from '../../../../src/lib/workers/waves/wave-protocol.js';
import { WavePool, type AskWavesOptions } from '../../../../src/lib/workers/waves/wave-pool.js';
import { AIR, IN_FRONT, ovalIn } from '../../../helpers/demo-installations.js';
import { FakeWaveWorker } from './fake-wave-worker.js';

/** What is heard of a shell of this length in mm. */
function hear(length: number): WaveQuestion & { kind: 'hear' } {
  const mount = { kind: 'shell', width: 0.03, height: 0.045, ends: 'closed', offset: 0 } as const;
  const installation = ovalIn({ ...mount, length: length / 1000 });
  return { kind: 'hear', installation, air: AIR, accuracy: 'full', listeners: [IN_FRONT] };
}

/** The polar picture of the same shell. */
function polar(length: number): WaveQuestion & { kind: 'polar' } {
  const { installation, air, accuracy } = hear(length);
  const anglesDeg = Float64Array.of(0, 90);
  return { kind: 'polar', installation, air, accuracy, frequency: 1000, plane: 'length', anglesDeg };
}

function pooled(size: number) {
  const made: FakeWaveWorker[] = [];
  const pool = new WavePool(() => {
    made.push(new FakeWaveWorker());
    return made.at(-1) as unknown as Worker;
  }, size);
  pool.onDied = vi.fn();
  /** Asks about a shell of this length, and notes how it went. */
  const ask = (length: number, options: AskWavesOptions = {}) => pool.ask(hear(length), options);
  const logs = () => made.map(({ log }) => log);
  return { pool, made, ask, logs };
}

/** A question that is to be aborted. */
function stoppable(ask: (options: AskWavesOptions) => Promise<unknown>, options: AskWavesOptions = {}) {
  const stop = new AbortController();
  const promise = ask({ ...options, signal: stop.signal });
  promise.catch(() => {});
  return { promise, abort: (reason?: unknown) => stop.abort(reason) };
}

const SENTENCE = 'The part of the program that computes waves';

describe('asking', () => {
  test('no worker is started before it is needed, and no more than the size', () => {
    const { made, ask } = pooled(2);
    expect(made.length).toBe(0);
    const lengths = [100, 110, 120];
    lengths.forEach((length, i) => {
      void ask(length);
      expect(made.length).toBe(Math.min(2, i + 1));
    });
  });

  test('questions are given out in their order, one to a worker, and each gets its own answer', async () => {
    const { made, ask, logs } = pooled(2);
    const all = [100, 110, 120, 130].map((length) => ask(length));
    expect(logs()).toEqual([['100'], ['110']]);
    made[1].answer(110);
    expect(logs()).toEqual([['100'], ['110', '120']]);
    made[0].answer(100);
    made[0].answer(130);
    made[1].answer(120);
    expect(await Promise.all(all)).toEqual(['of 100', 'of 110', 'of 120', 'of 130']);
  });

  test('an impossible question rejects with its sentence, and the next one is asked', async () => {
    const { made, ask, logs } = pooled(1);
    const [first, second] = [ask(100), ask(110)];
    made[0].refuse('shell length must be within 1 … 3000 mm, got 0');
    await expect(first).rejects.toThrow(/^shell length must be within 1 … 3000 mm, got 0$/);
    expect(logs()).toEqual([['100', '110']]);
    made[0].answer(110);
    expect(await second).toBe('of 110');
  });

  test('a question is what it was when it was asked; one that cannot be copied rejects', async () => {
    const { pool, made } = pooled(1);
    void pool.ask(hear(100));
    const question = polar(110);
    void pool.ask(question);
    question.anglesDeg.fill(NaN);
    made[0].answer(100);
    expect(made[0].told.at(-1)).toMatchObject({ question: polar(110) });
    await expect(pool.ask({ ...hear(120), extra: () => 0 } as ReturnType<typeof hear>)).rejects.toMatchObject(
      { name: 'DataCloneError' }
    );
  });

  test('progress never goes back, and each is told once', async () => {
    const { made, ask } = pooled(1);
    const told: number[] = [];
    const answer = ask(100, { onProgress: (share) => told.push(share) });
    for (const share of [0, 0.2, 0.2, 0.1, 0.5]) made[0].progress(share);
    made[0].onerror!({ message: '' });
    for (const share of [0, 0.2, 0.6, 1]) made[1].progress(share);
    made[1].answer(100);
    await answer;
    expect(told).toEqual([0, 0.2, 0.5, 0.6, 1]);
  });
});

describe('a mount that a worker knows', () => {
  test('is asked of it, and others of the worker that knows fewest', async () => {
    const { pool, made, ask, logs } = pooled(2);
    const both = [ask(100), ask(110)];
    made[0].answer(100);
    made[1].answer(110);
    await Promise.all(both);
    void pool.ask(polar(110));
    made[1].answer(110);
    void ask(110);
    made[1].answer(110);
    void ask(120);
    expect(logs()).toEqual([
      ['100', '120'],
      ['110', 'polar 110', '110']
    ]);
  });

  test('is asked of another one if that is busy and it is not urgent', () => {
    const { made, ask, logs } = pooled(2);
    void ask(100);
    made[0].answer(100);
    void ask(110);
    expect(logs()).toEqual([['100', '110']]);
    void ask(100);
    expect(logs()).toEqual([['100', '110'], ['100']]);
  });

  test('is asked of it, busy or not, if it is urgent', () => {
    const { made, ask, logs } = pooled(2);
    void ask(100);
    made[0].answer(100);
    void ask(110);
    void ask(100, { urgent: true });
    void ask(100, { urgent: true });
    expect(logs()).toEqual([['100', '110', '100!']]);
    made[0].answer(100);
    expect(logs()).toEqual([['100', '110', '100!', '100!']]);
  });

  test('is only half known by its picture, and not at all by its solution of another accuracy', () => {
    const { pool, made, ask, logs } = pooled(2);
    void ask(110);
    void pool.ask(polar(100));
    made[1].answer(100);
    for (const length of [120, 130]) {
      void ask(length);
      made[1].answer(length);
    }
    made[0].answer(110);
    // the second worker has solved more than the first
    void pool.ask(polar(100));
    made[1].answer(100);
    void ask(100);
    made[0].answer(100);
    void pool.ask({ ...hear(130), accuracy: 'draft' });
    expect(logs()).toEqual([
      ['110', '100', '130'],
      ['polar 100', '120', '130', 'polar 100']
    ]);
  });
});

describe('an urgent question', () => {
  test('goes before those that wait', () => {
    const { made, ask, logs } = pooled(1);
    void ask(100, { urgent: true });
    void ask(110);
    void ask(120, { urgent: true });
    void ask(130, { urgent: true });
    made[0].answer(100);
    made[0].answer(120);
    made[0].answer(130);
    expect(logs()).toEqual([['100!', '120!', '130!', '110']]);
  });

  test('is put on top of long work, but not of another urgent one', async () => {
    const { made, ask, logs } = pooled(2);
    const long = [ask(100), ask(110)];
    const urgent = [120, 130, 140].map((length) => ask(length, { urgent: true }));
    expect(logs()).toEqual([
      ['100', '120!'],
      ['110', '130!']
    ]);
    made[1].answer(130);
    expect(logs()[1]).toEqual(['110', '130!', '140!']);
    made[1].answer(140);
    made[0].answer(120);
    expect(await Promise.all(urgent)).toEqual(['of 120', 'of 130', 'of 140']);
    made[0].answer(100);
    made[1].answer(110);
    expect(await Promise.all(long)).toEqual(['of 100', 'of 110']);
  });

  test('goes to an idle worker rather than on top of long work', () => {
    const { ask, logs } = pooled(2);
    void ask(100);
    void ask(110, { urgent: true });
    expect(logs()).toEqual([['100'], ['110!']]);
  });

  test('is not joined by long work', () => {
    const { made, ask, logs } = pooled(1);
    void ask(100, { urgent: true });
    void ask(110);
    expect(logs()).toEqual([['100!']]);
    made[0].answer(100);
    expect(logs()).toEqual([['100!', '110']]);
  });
});

describe('aborting', () => {
  test('a question that waits is never sent', async () => {
    const { made, ask, logs } = pooled(1);
    void ask(100);
    const second = stoppable((options) => ask(110, options));
    void ask(120);
    second.abort();
    await expect(second.promise).rejects.toMatchObject({ name: 'AbortError' });
    made[0].answer(100);
    expect(logs()).toEqual([['100', '120']]);
  });

  test('a question that is worked at rejects at once, and its worker is given another when it has let go', async () => {
    const { made, ask, logs } = pooled(1);
    const first = stoppable((options) => ask(100, options));
    const second = ask(110);
    first.abort(new Error('changed my mind'));
    await expect(first.promise).rejects.toThrow('changed my mind');
    expect(logs()).toEqual([['100', 'drop 100']]);
    made[0].acknowledge();
    expect(logs()).toEqual([['100', 'drop 100', '110']]);
    made[0].answer(110);
    expect(await second).toBe('of 110');
  });

  test('an answer that crosses with the abort goes to nobody, and counts as the end', async () => {
    const { made, ask, logs } = pooled(1);
    const onProgress = vi.fn();
    const first = stoppable((options) => ask(100, { ...options, onProgress }));
    const second = ask(110);
    first.abort();
    made[0].progress(1);
    made[0].answer(100);
    expect(onProgress).not.toHaveBeenCalled();
    expect(logs()).toEqual([['100', 'drop 100', '110']]);
    made[0].acknowledge();
    made[0].answer(110);
    await expect(first.promise).rejects.toMatchObject({ name: 'AbortError' });
    expect(await second).toBe('of 110');
  });

  test('a signal aborted before asking costs nothing; one aborted after the answer changes nothing', async () => {
    const { made, ask, logs } = pooled(1);
    await expect(ask(100, { signal: AbortSignal.abort() })).rejects.toMatchObject({ name: 'AbortError' });
    expect(made.length).toBe(0);
    const late = stoppable((options) => ask(110, options));
    made[0].answer(110);
    late.abort();
    expect(await late.promise).toBe('of 110');
    expect(logs()).toEqual([['110']]);
  });

  test('nothing of a settled question stays with its signal', async () => {
    const { made, ask } = pooled(1);
    const { signal } = new AbortController();
    const added = vi.spyOn(signal, 'addEventListener');
    const removed = vi.spyOn(signal, 'removeEventListener');
    const [first, second] = [ask(100, { signal }), ask(110, { signal })];
    made[0].answer(100);
    made[0].refuse('impossible', 110);
    await first;
    await expect(second).rejects.toThrow('impossible');
    const listeners = (spy: typeof added | typeof removed) => spy.mock.calls.map(([, listener]) => listener);
    expect(listeners(removed)).toEqual(listeners(added));
    expect(listeners(added)).toHaveLength(2);
  });

  test('200 quick moves leave one answer, and hardly a question sent', async () => {
    const { made, ask, logs } = pooled(2);
    void ask(100);
    const told: string[] = [];
    let move = stoppable((options) => ask(200, options), { urgent: true });
    const outcomes = [move.promise];
    for (let i = 1; i < 200; i++) {
      move.abort();
      move = stoppable((options) => ask(200 + i, options), { urgent: true });
      outcomes.push(move.promise);
    }
    for (const worker of made) worker.acknowledge();
    made[0].answer(399);
    for (const outcome of await Promise.allSettled(outcomes))
      if (outcome.status === 'fulfilled') told.push(outcome.value as string);
    expect(told).toEqual(['of 399']);
    expect(logs()).toEqual([
      ['100', '201!', 'drop 201', '399!'],
      ['200!', 'drop 200']
    ]);
  });
});

describe('a worker that dies', () => {
  test('is replaced: its questions are asked once more, others go on, and the user is told', async () => {
    const { pool, made, ask, logs } = pooled(2);
    const all = [ask(100), ask(110), ask(120)];
    made[0].onerror!({ message: 'out of memory' });
    expect(pool.onDied).toHaveBeenCalledExactlyOnceWith(
      `${SENTENCE} has failed (out of memory); it was started anew.`
    );
    expect(made[0].terminated).toBe(true);
    expect(logs()).toEqual([['100'], ['110'], ['100']]);
    made[1].answer(110);
    made[2].answer(100);
    made[1].answer(120);
    expect(await Promise.all(all)).toEqual(['of 100', 'of 110', 'of 120']);
  });

  test('twice on the same question rejects it, and the next one is asked', async () => {
    const { pool, made, ask, logs } = pooled(1);
    const [first, second] = [ask(100), ask(110)];
    made[0].onerror!({ message: 'out of memory' });
    made[1].onmessageerror!();
    await expect(first).rejects.toThrow(`${SENTENCE} sent garbage, twice on the same question.`);
    expect(vi.mocked(pool.onDied!).mock.calls).toEqual([
      [`${SENTENCE} has failed (out of memory); it was started anew.`],
      [`${SENTENCE} sent garbage; it was started anew.`]
    ]);
    expect(logs()).toEqual([['100'], ['100'], ['110']]);
    made[2].answer(110);
    expect(await second).toBe('of 110');
  });

  test('takes what it knew with it', () => {
    const { made, ask, logs } = pooled(2);
    void ask(100);
    made[0].answer(100);
    made[0].onerror!({ message: '' });
    expect(made.length).toBe(1);
    void ask(100);
    expect(logs()).toEqual([['100'], ['100']]);
  });

  test('is not mourned by a question that was aborted', () => {
    const { made, ask } = pooled(1);
    stoppable((options) => ask(100, options)).abort();
    made[0].onerror!({ message: '' });
    expect(made.length).toBe(1);
  });

  test('is heard no more', async () => {
    const { made, ask } = pooled(1);
    const answer = ask(100);
    made[0].onerror!({ message: '' });
    made[0].answer(100, 'from the grave');
    made[1].answer(100);
    expect(await answer).toBe('of 100');
  });

  test('with two questions gives the urgent one a new worker first', () => {
    const { made, ask, logs } = pooled(2);
    void ask(100);
    void ask(110);
    void ask(120, { urgent: true });
    made[0].onerror!({ message: '' });
    expect(logs()).toEqual([['100', '120!'], ['110'], ['120!']]);
    made[1].answer(110);
    expect(logs()[1]).toEqual(['110', '100']);
  });
});

describe('workers that cannot be started', () => {
  const failing = (after: number) => {
    const made: FakeWaveWorker[] = [];
    const makeWorker = vi.fn((): Worker => {
      if (made.length >= after) throw new Error('no workers here');
      made.push(new FakeWaveWorker());
      return made.at(-1) as unknown as Worker;
    });
    const pool = new WavePool(makeWorker, 3);
    pool.onDied = vi.fn();
    return { pool, made, makeWorker };
  };

  test('reject in one sentence, and are tried again at the next question only', async () => {
    const { pool, makeWorker } = failing(0);
    pool.warmUp();
    expect(pool.onDied).not.toHaveBeenCalled();
    for (let i = 0; i < 2; i++)
      await expect(pool.ask(hear(100))).rejects.toThrow(`${SENTENCE} cannot start (no workers here).`);
    expect(makeWorker).toHaveBeenCalledTimes(3);
    expect(pool.onDied).toHaveBeenCalledTimes(2);
  });

  test('are made up for by those there are', async () => {
    const { pool, made, makeWorker } = failing(1);
    const all = [100, 110, 120].map((length) => pool.ask(hear(length)));
    for (const length of [100, 110, 120]) made[0].answer(length);
    expect(await Promise.all(all)).toEqual(['of 100', 'of 110', 'of 120']);
    expect(makeWorker).toHaveBeenCalledTimes(2);
    expect(pool.onDied).not.toHaveBeenCalled();
  });
});

test('warming up starts every worker with something small, which an urgent question does not wait for', () => {
  const { pool, made, ask } = pooled(3);
  void ask(100);
  pool.warmUp();
  expect(made.length).toBe(3);
  for (const worker of made.slice(1))
    expect(worker.told).toMatchObject([{ urgent: false, question: { kind: 'hear', accuracy: 'draft' } }]);
  pool.warmUp();
  expect(made.flatMap(({ told }) => told).length).toBe(3);
  made[2].answer();
  void ask(110);
  expect(made[2].log.at(-1)).toBe('110');
  void ask(120, { urgent: true });
  void ask(130, { urgent: true });
  expect(made[1].log.at(-1)).toBe('130!');
});

test('closing ends the workers and rejects what is open and what comes', async () => {
  const { pool, made, ask } = pooled(2);
  const open = [100, 110, 120].map((length) => ask(length));
  pool.close();
  pool.warmUp();
  for (const question of [...open, ask(130)]) await expect(question).rejects.toThrow('have been closed');
  expect(made.map(({ terminated }) => terminated)).toEqual([true, true]);
});
