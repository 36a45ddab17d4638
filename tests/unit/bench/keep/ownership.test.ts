import { expect, it } from 'vitest';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { newKeeping, type Keeping } from '../../../../src/lib/bench/keep/keeping.js';
import { KeptStatus } from '../../../../src/lib/bench/keep/kept-status.svelte.js';
import { Ownership } from '../../../../src/lib/bench/keep/ownership.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { writeBenchFile } from '../../../../src/lib/file/write-bench-file.js';

function at() {
  const bench = new Bench();
  const status = new KeptStatus();
  const turned: Keeping[] = [];
  const ownership = new Ownership(bench, status, (keeping) => turned.push(keeping));
  return { bench, status, turned, ownership };
}
const air = (temperatureC: number) => ({ ...demoBench(), air: { temperatureC } });
const kept = (id: string, temperatureC: number) => ({
  id,
  name: `Bench ${id}`,
  text: writeBenchFile(air(temperatureC)),
  stamp: `stamp ${id}`,
  keptAt: 0
});

it('begins with the demo bench, which listening leaves untouched and work does not', () => {
  const { bench, ownership, turned } = at();
  bench.hear(2);
  expect([ownership.follow().demo, ownership.untouched]).toEqual([true, true]);
  bench.setTemperature(3);
  ownership.follow();
  expect(ownership.untouched).toBe(false);
  bench.undo();
  expect(ownership.untouched).toBe(true);
  expect(turned).toEqual([]);
});

it('gives every value back to its bench, through undo and redo', () => {
  const { bench, ownership, status } = at();
  const yard = newKeeping('Yard');
  expect(ownership.put(yard, air(1))).toBe(true);
  bench.setTemperature(2);
  expect(ownership.follow()).toBe(yard);
  ownership.putKept(kept('b', 5));
  expect(ownership.keeping.name).toBe('Bench b');
  bench.undo();
  expect([ownership.follow(), status.name, bench.file.air.temperatureC]).toEqual([yard, 'Yard', 2]);
  bench.undo();
  expect(ownership.follow()).toBe(yard);
  bench.undo();
  expect(ownership.follow().demo).toBe(true);
  for (let i = 0; i < 3; i++) bench.redo();
  expect([ownership.follow().name, bench.file.air.temperatureC]).toEqual(['Bench b', 5]);
});

it('knows a bench that is opened again', () => {
  const { ownership } = at();
  ownership.putKept(kept('a', 1));
  const first = ownership.keeping;
  ownership.putDemo();
  expect(ownership.keeping.demo).toBe(true);
  ownership.putKept({ ...kept('a', 7), stamp: 'later' });
  expect(ownership.keeping).toBe(first);
  expect([first.stamp, ownership.known('a')]).toEqual(['later', first]);
});

it('tells of every bench that comes on or is named, but not of the demo', () => {
  const { ownership, turned } = at();
  ownership.putDemo();
  ownership.call('Yard');
  ownership.putKept(kept('b', 5));
  expect(turned.map(({ name }) => name)).toEqual(['Yard', 'Bench b']);
});

it('makes a bench of its own that nothing is kept of, with the whole way back', () => {
  const { bench, ownership } = at();
  ownership.putKept(kept('a', 1));
  bench.setTemperature(2);
  const keeping = ownership.follow();
  ownership.renew('Copy');
  expect([keeping.name, keeping.stamp, keeping.text, keeping.id === 'a']).toEqual([
    'Copy',
    null,
    null,
    false
  ]);
  expect([ownership.known('a'), ownership.known(keeping.id)]).toEqual([undefined, keeping]);
  bench.undo();
  expect(ownership.follow()).toBe(keeping);
});

it('says what cannot be put on the bench, and leaves the bench as it was', () => {
  const { bench, ownership, status } = at();
  const before = bench.file;
  const seven = { ...demoBench(), setups: Array.from({ length: 7 }, () => demoBench().setups[0]) };
  expect(ownership.put(newKeeping('Big'), seven)).toBe(false);
  expect(status.fileProblem).toBe(
    '“Big” could not be opened: this bench holds 7 mounts; the shelf has room for 6. The bench is as it was.'
  );
  ownership.putKept({ ...kept('a', 1), text: '{' });
  expect(status.fileProblem).toMatch(/^“Bench a” could not be opened: .*not JSON.*It lies in this browser/);
  expect([bench.file, ownership.keeping.demo]).toEqual([before, true]);
});

it('makes no step of where the page starts', () => {
  const { bench, ownership } = at();
  ownership.putKept(kept('a', 1), true);
  expect([bench.canUndo, bench.file.air.temperatureC]).toEqual([false, 1]);
});
