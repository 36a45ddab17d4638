import { usualSound } from '../../../../src/lib/sounds/roster.js';
import { describe, expect, test, vi } from 'vitest';
import { LabClient } from '../../../../src/lib/workers/sound/client.js';
import type { Asked, Question } from '../../../../src/lib/workers/sound/protocol.js';

/** Stands in for a worker: notes what it is asked, and answers when the test says so. */
class FakeWorker {
  static made: FakeWorker[] = [];
  asked: Asked[] = [];
  terminated = false;
  onmessage: ((event: { data: unknown }) => void) | null = null;
  onerror: ((event: { message: string }) => void) | null = null;
  onmessageerror: (() => void) | null = null;

  constructor() {
    FakeWorker.made.push(this);
  }
  postMessage(message: Asked, transfer: Transferable[]) {
    this.asked.push(structuredClone(message, { transfer }));
  }
  terminate() {
    this.terminated = true;
  }
  get kinds(): Question['kind'][] {
    return this.asked.map(({ question }) => question.kind);
  }
  answer(result: unknown) {
    this.onmessage!({ data: { id: this.asked.at(-1)!.id, result } });
  }
  fail(error: string) {
    this.onmessage!({ data: { id: this.asked.at(-1)!.id, error } });
  }
}

function lab() {
  FakeWorker.made = [];
  const client = new LabClient(() => new FakeWorker() as unknown as Worker);
  const worker = () => FakeWorker.made.at(-1)!;
  return { client, worker };
}
const horn = { kind: 'blast', signal: 'five-note horn', sampleRate: 48000 } as const;
const noise = { kind: 'sound', sound: usualSound('pinkNoise'), sampleRate: 8000 } as const;
const forget = { kind: 'forget', key: 'x' } as const;
const keep = (key: string, samples: Float32Array) =>
  ({ kind: 'keep', key, samples, sampleRate: 48000 }) as const;
const settled = () => new Promise((resolve) => setTimeout(resolve));

describe('asking', () => {
  test('no worker is started before the first question', () => {
    lab();
    expect(FakeWorker.made).toEqual([]);
  });

  test('an answer reaches its question', async () => {
    const { client, worker } = lab();
    const sound = client.ask(horn);
    worker().answer(Float32Array.of(1, 2));
    expect(await sound).toEqual(Float32Array.of(1, 2));
  });

  test('an error rejects with its sentence, and the next question is asked', async () => {
    const { client, worker } = lab();
    const first = client.ask(horn);
    const second = client.ask(forget);
    worker().fail('sample rate must be within 1 … 2 Hz, got 3');
    await expect(first).rejects.toThrow('sample rate must be within 1 … 2 Hz, got 3');
    worker().answer(null);
    expect(await second).toBeNull();
  });

  test('one question is with the worker at a time, the others keep their order', async () => {
    const { client, worker } = lab();
    const all = [client.ask(horn), client.ask(forget), client.ask(noise)];
    expect(worker().kinds).toEqual(['blast']);
    worker().answer('a');
    expect(worker().kinds).toEqual(['blast', 'forget']);
    worker().answer('b');
    worker().answer('c');
    expect(await Promise.all(all)).toEqual(['a', 'b', 'c']);
  });

  test('a question that cannot be sent rejects, and does not block the line', async () => {
    const { client, worker } = lab();
    const bad = client.ask({ ...horn, extra: () => 0 } as typeof horn);
    await expect(bad).rejects.toThrow();
    const good = client.ask(horn);
    worker().answer('a');
    expect(await good).toBe('a');
  });
});

describe('aborting', () => {
  test('an aborted question that waits is never sent', async () => {
    const { client, worker } = lab();
    const first = client.ask(horn);
    const stop = new AbortController();
    const second = client.ask(forget, { signal: stop.signal });
    const third = client.ask(noise);
    stop.abort();
    await expect(second).rejects.toMatchObject({ name: 'AbortError' });
    worker().answer('a');
    worker().answer('c');
    expect([await first, await third]).toEqual(['a', 'c']);
    expect(worker().kinds).toEqual(['blast', 'sound']);
  });

  test('an aborted question that is with the worker rejects at once; its late answer goes to nobody', async () => {
    const { client, worker } = lab();
    const stop = new AbortController();
    const first = client.ask(horn, { signal: stop.signal });
    const second = client.ask(forget);
    stop.abort(new Error('changed my mind'));
    await expect(first).rejects.toThrow('changed my mind');
    expect(worker().kinds).toEqual(['blast']);
    worker().answer('late');
    worker().answer('own');
    expect(await second).toBe('own');
  });

  test('a signal aborted before asking costs nothing', async () => {
    const { client } = lab();
    await expect(client.ask(horn, { signal: AbortSignal.abort() })).rejects.toMatchObject({
      name: 'AbortError'
    });
    expect(FakeWorker.made).toEqual([]);
  });

  test('aborting after the answer changes nothing', async () => {
    const { client, worker } = lab();
    const stop = new AbortController();
    const sound = client.ask(horn, { signal: stop.signal });
    worker().answer('a');
    stop.abort();
    expect(await sound).toBe('a');
  });
});

describe('keeping', () => {
  test('the caller keeps his array', async () => {
    const { client, worker } = lab();
    const samples = Float32Array.of(1, 2, 3);
    const kept = client.ask(keep('a', samples));
    worker().answer('figures');
    await kept;
    expect(samples).toEqual(Float32Array.of(1, 2, 3));
    expect(worker().asked[0].question).toEqual(keep('a', Float32Array.of(1, 2, 3)));
  });

  test('an array handed over moves', async () => {
    const { client, worker } = lab();
    const samples = Float32Array.of(1, 2, 3);
    const kept = client.ask(keep('a', samples), { transfer: [samples.buffer] });
    expect(samples.length).toBe(0);
    worker().answer('figures');
    await kept;
    expect(worker().asked[0].question).toEqual(keep('a', Float32Array.of(1, 2, 3)));
  });
});

describe('a worker that dies', () => {
  test('fails everything open in a plain sentence, and tells', async () => {
    const { client, worker } = lab();
    client.onDied = vi.fn();
    const open = [client.ask(horn), client.ask(forget)];
    worker().onerror!({ message: 'out of memory' });
    const sentence = 'The part of the program that computes sounds has failed (out of memory).';
    for (const question of open) await expect(question).rejects.toThrow(sentence);
    expect(client.onDied).toHaveBeenCalledExactlyOnceWith(sentence);
    expect(worker().terminated).toBe(true);
  });

  test('is replaced at the next question, which comes after the kept sounds', async () => {
    const { client, worker } = lab();
    const samples = Float32Array.of(1, 2, 3);
    for (const key of ['a', 'b', 'c']) {
      const kept = client.ask(keep(key, samples));
      worker().answer('figures');
      await kept;
    }
    const forgotten = client.ask({ kind: 'forget', key: 'b' });
    worker().answer(null);
    await forgotten;
    samples.fill(0);

    worker().onmessageerror!();
    expect(FakeWorker.made.length).toBe(1);
    const next = client.ask(horn);
    expect(FakeWorker.made.length).toBe(2);
    worker().answer('figures');
    worker().answer('figures');
    worker().answer('sound');
    expect(await next).toBe('sound');
    expect(worker().asked.map(({ question }) => question)).toEqual([
      keep('a', Float32Array.of(1, 2, 3)),
      keep('c', Float32Array.of(1, 2, 3)),
      horn
    ]);
  });

  test('a sound on which the worker died is not kept again', async () => {
    const { client, worker } = lab();
    const kept = client.ask(keep('a', Float32Array.of(1)));
    worker().onerror!({ message: '' });
    await expect(kept).rejects.toThrow('has failed.');
    const next = client.ask(horn);
    expect(worker().kinds).toEqual(['blast']);
    worker().answer('a');
    expect(await next).toBe('a');
  });

  test('one that cannot even start fails its question, and is tried again at the next', async () => {
    const makeWorker = vi.fn((): Worker => {
      throw new Error('no workers here');
    });
    const client = new LabClient(makeWorker);
    for (let i = 0; i < 2; i++)
      await expect(client.ask(horn)).rejects.toThrow('computes sounds cannot start (no workers here).');
    expect(makeWorker).toHaveBeenCalledTimes(2);
  });
});

test('closing ends the worker and rejects what is open and what comes', async () => {
  const { client, worker } = lab();
  const open = [client.ask(horn), client.ask(forget)];
  client.close();
  expect(worker().terminated).toBe(true);
  for (const question of [...open, client.ask(horn)])
    await expect(question).rejects.toThrow('has been closed');
  await settled();
  expect(FakeWorker.made.length).toBe(1);
});
