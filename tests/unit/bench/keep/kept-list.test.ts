import { beforeEach, expect, it, vi } from 'vitest';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { writeBenchFile } from '../../../../src/lib/file/write-bench-file.js';
import { BenchStore } from '../../../../src/lib/bench/keep/bench-store.js';
import { KeptList } from '../../../../src/lib/bench/keep/kept-list.svelte.js';
import { MemoryStore } from '../../../helpers/memory-store.js';

const text = (heard: number, temperatureC = 20) =>
  writeBenchFile({ ...demoBench(), air: { temperatureC }, view: { ...demoBench().view, heard } });

let backend: MemoryStore;
let list: KeptList;

beforeEach(async () => {
  backend = new MemoryStore();
  const bench = { stamp: 's', text: text(0) };
  backend.held.set('bench a', { ...bench, id: 'a', name: 'Yard', keptAt: 1 });
  backend.held.set('bench b', { ...bench, id: 'b', name: 'Main line', keptAt: 3 });
  backend.held.set('bench c', { ...bench, id: 'c', name: 'Broken', text: '{', keptAt: 2 });
  backend.held.set('last', 'a');
  list = new KeptList(new BenchStore(backend));
  await list.refresh();
});

it('lists the benches of the store, the latest first, and says what cannot be opened', () => {
  expect(list.entries.map(({ name, problem }) => [name, problem === null])).toEqual([
    ['Main line', true],
    ['Broken', false],
    ['Yard', true]
  ]);
  expect(list.entries[1].problem).toContain('not JSON');
});

it('puts what has just been kept on top, once and under its newest name', () => {
  list.noteKept({ id: 'a', name: 'Old yard' });
  expect(list.entries.map(({ name }) => name)).toEqual(['Old yard', 'Main line', 'Broken']);
});

it('knows the names that are taken', () => {
  expect(list.freeName('Yard')).toBe('Yard 2');
  expect(list.freeName('Shed')).toBe('Shed');
  expect(list.freeName('Shed', ['Shed'])).toBe('Shed 2');
});

it.each([
  ['  Shed\n', undefined, { name: 'Shed' }],
  ['Yard', 'a', { name: 'Yard' }],
  ['Yard', undefined, { refused: 'another bench is called “Yard” already' }],
  ['Yard', 'b', { refused: 'another bench is called “Yard” already' }],
  ['', undefined, { refused: 'a bench needs a name' }]
])('takes the typed name %j of the bench %s as %j', (name, own, accepted) => {
  expect(list.accept(name, own)).toEqual(accepted);
});

it('finds the same work under the same name, whichever mount is heard', async () => {
  expect((await list.same('Yard', text(2)))?.id).toBe('a');
  expect(await list.same('Shed', text(2))).toBeNull();
  expect(await list.same('Yard', text(0, 3))).toBeNull();
  vi.spyOn(backend, 'values').mockRejectedValue(new Error('closed'));
  expect(await list.same('Yard', text(2))).toBeNull();
});
