import { flushSync } from 'svelte';
import { afterEach, expect, test } from 'vitest';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { KeptRecordings, MAX_KEPT_BYTES } from '../../../../src/lib/bench/keep/kept-recordings.js';
import { KeptStatus } from '../../../../src/lib/bench/keep/kept-status.svelte.js';
import { RecordingKeeper } from '../../../../src/lib/bench/keep/recording-keeper.svelte.js';
import { aTurn } from '../../../helpers/a-turn.js';
import { MemoryStore } from '../../../helpers/memory-store.js';

let end = (): void => undefined;
afterEach(() => end());

const settled = async (): Promise<void> => {
  for (let i = 0; i < 8; i++) {
    flushSync();
    await aTurn();
  }
};

/** One page on what the browser has kept; the sound is opened by a stand-in. */
function page(backend: MemoryStore, id: string | null = 'yard') {
  const [bench, status, store] = [new Bench(), new KeptStatus(), new KeptRecordings(backend)];
  status.current = id;
  let file = $state.raw<File | null>(null);
  const asked: string[] = [];
  const opener = {
    get file() {
      return file;
    },
    opening: false,
    open: async (given: File) => {
      asked.push(given.name);
      file = given;
    }
  };
  const keeper = new RecordingKeeper(bench, status, store, opener);
  end();
  end = $effect.root(() => keeper.connect());
  const name = (recording: string): void => bench.setSound({ kind: 'recording', name: recording });
  return { bench, status, store, asked, name, give: (given: File) => (file = given), opened: () => file };
}

const whistle = new File([Uint8Array.of(1, 2, 3)], 'whistle.wav', { type: 'audio/wav' });

test('a recording is there again after a reload, and nothing was asked of the user', async () => {
  const backend = new MemoryStore();
  const first = page(backend);
  first.give(whistle);
  first.name('whistle.wav');
  await settled();
  expect([first.status.recording, backend.writes]).toEqual(['kept', 1]);
  const second = page(backend);
  second.name('whistle.wav');
  await settled();
  expect([second.asked, second.status.recording]).toEqual([['whistle.wav'], 'kept']);
  expect([...new Uint8Array(await second.opened()!.arrayBuffer())]).toEqual([1, 2, 3]);
  expect(backend.writes, 'what was read is not written again').toBe(1);
});

test('what is kept with another bench, or is another file, is not opened', async () => {
  const backend = new MemoryStore();
  const first = page(backend);
  first.give(whistle);
  first.name('whistle.wav');
  await settled();
  for (const [id, name] of [
    ['main line', 'whistle.wav'],
    ['yard', 'bell.wav']
  ]) {
    const other = page(backend, id);
    other.name(name);
    await settled();
    expect([other.asked, other.status.recording]).toEqual([[], null]);
  }
});

test('a bench that goes on under another name has its recording there, too', async () => {
  const backend = new MemoryStore();
  const { give, name, status } = page(backend);
  give(whistle);
  name('whistle.wav');
  await settled();
  status.current = 'main line';
  await settled();
  expect([...backend.held.keys()]).toEqual(['yard', 'main line']);
});

test('a file that is too large is not kept, nor what was kept before in its place; that is said', async () => {
  const backend = new MemoryStore();
  const { give, name, status } = page(backend);
  give(whistle);
  name('whistle.wav');
  await settled();
  const large = new File([new Uint8Array(MAX_KEPT_BYTES + 1)], 'large.wav');
  give(large);
  name('large.wav');
  await settled();
  expect([status.recording, backend.held.size]).toEqual(['too large', 0]);
});

test('a store that refuses is told of', async () => {
  const backend = new MemoryStore();
  backend.refuse = new Error('full');
  const { give, name, status } = page(backend);
  give(whistle);
  name('whistle.wav');
  await settled();
  expect(status.recording).toBe('refused');
});
