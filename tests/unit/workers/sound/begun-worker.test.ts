import { readFileSync } from 'node:fs';
import { afterEach, expect, test, vi } from 'vitest';
import { begunWorker } from '../../../../src/lib/workers/sound/begun-worker.js';
import { LabClient } from '../../../../src/lib/workers/sound/client.js';
import type { Asked } from '../../../../src/lib/workers/sound/protocol.js';

/** What stands before anything else of the page. */
const first = new Function(readFileSync('static/begin.js', 'utf8'));

const asked: Asked = { id: 0, question: { kind: 'blast', signal: 'whistle', sampleRate: 48000 } };

/** A browser's page as far as it is asked, whose workers note what is done with them. */
function browserWith(held: Map<string, string>, { refuses = false } = {}) {
  const made: FakeWorker[] = [];
  class FakeWorker {
    asked: unknown[] = [];
    onerror: (() => void) | null = null;
    onmessage: ((event: { data: unknown }) => void) | null = null;
    constructor(
      readonly address: URL | string,
      readonly options: unknown
    ) {
      if (refuses) throw new Error('no workers here');
      made.push(this);
    }
    postMessage(message: unknown) {
      this.asked.push(message);
    }
    terminate() {}
  }
  const dataset = { firstSound: JSON.stringify({ worker: './parts/sound.js', asked }) };
  vi.stubGlobal('document', { currentScript: { dataset }, documentElement: { classList: new Set() } });
  vi.stubGlobal('location', { href: 'https://a.host/some/folder/index.html' });
  vi.stubGlobal('localStorage', { getItem: (key: string) => held.get(key) ?? null });
  vi.stubGlobal('Worker', FakeWorker);
  return made;
}

afterEach(() => {
  begunWorker();
  vi.unstubAllGlobals();
});

test('the worker is begun by the first script, in whichever folder the page stands, and has the first question', () => {
  const made = browserWith(new Map());
  first();
  expect(made.map(({ address, options }) => [String(address), options])).toEqual([
    ['https://a.host/some/folder/parts/sound.js', { type: 'module' }]
  ]);
  expect(made[0].asked).toEqual([asked]);
  expect(begunWorker()).toBe(made[0]);
  expect(begunWorker(), 'for one only').toBeNull();
});

test('where a bench is kept it is begun as well, and nothing is asked for another bench', () => {
  const made = browserWith(new Map([['backwave keeps a bench', 'yes']]));
  first();
  expect(made.length).toBe(1);
  expect(made[0].asked).toEqual([]);
});

test('the client goes on with it: it makes no other, and what it has not asked is no answer to it', async () => {
  const made = browserWith(new Map());
  first();
  const client = new LabClient();
  const answer = client.ask({ kind: 'forget', key: 'x' });
  expect(made.length).toBe(1);
  made[0].onmessage!({ data: { id: 0, result: new Float32Array(4) } });
  made[0].onmessage!({ data: { id: 1, result: null } });
  expect(await answer).toBeNull();
  client.close();
});

test('one that failed before the page was there is not gone on with, nor one that could not be made', () => {
  const made = browserWith(new Map());
  first();
  made[0].onerror!();
  expect(begunWorker()).toBeNull();
  browserWith(new Map(), { refuses: true });
  expect(first).not.toThrow();
  expect(begunWorker()).toBeNull();
});
