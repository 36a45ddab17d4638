import fc from 'fast-check';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { BenchFile } from '../../../../src/lib/file/bench-file.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { readBenchFile } from '../../../../src/lib/file/read-bench-file.js';
import { Autosave, type Outcome } from '../../../../src/lib/bench/keep/autosave.js';
import { BenchStore } from '../../../../src/lib/bench/keep/bench-store.js';
import { carryOver, EmergencySave } from '../../../../src/lib/bench/keep/emergency-save.js';
import { keepingOf, newKeeping, type Keeping } from '../../../../src/lib/bench/keep/keeping.js';
import { memoryShelf, MemoryStore } from '../../../helpers/memory-store.js';

/** A bench told apart by its air. */
const air = (temperatureC: number): BenchFile => ({ ...demoBench(), air: { temperatureC } });
const airOf = (text: string) => readBenchFile(text).air.temperatureC;

interface Tab {
  autosave: Autosave;
  outcomes: Outcome[];
  emergency: EmergencySave;
}

let backend: MemoryStore;
let store: BenchStore;
let shelf: Storage;

const tab = (): Tab => {
  const outcomes: Outcome[] = [];
  const emergency = new EmergencySave(() => shelf);
  return {
    autosave: new Autosave(store, emergency, (_, outcome) => outcomes.push(outcome)),
    outcomes,
    emergency
  };
};

/** The same bench, as another tab knows it. */
async function inAnotherTab(keeping: Keeping): Promise<Keeping> {
  return keepingOf((await store.read(keeping.id))!);
}

beforeEach(() => {
  vi.useFakeTimers();
  backend = new MemoryStore();
  store = new BenchStore(backend);
  shelf = memoryShelf();
});
afterEach(() => {
  vi.useRealTimers();
});

test('a change is in the store within 300 ms, and a long drag is written on the way', async () => {
  const { autosave } = tab();
  const keeping = newKeeping('Yard');
  for (let i = 0; i < 60; i++) {
    autosave.note(keeping, air(i / 10));
    await vi.advanceTimersByTimeAsync(16);
  }
  const during = airOf((await store.read(keeping.id))!.text);
  expect(during).toBeGreaterThan(5.9 - 300 / 16 / 10);
  expect(backend.writes).toBeGreaterThan(2);
  expect(backend.writes).toBeLessThan(8);
  await vi.advanceTimersByTimeAsync(300);
  expect(airOf((await store.read(keeping.id))!.text)).toBe(5.9);
});

test('what is already there is not written again', async () => {
  const { autosave } = tab();
  const keeping = newKeeping('Yard');
  autosave.note(keeping, air(1));
  await autosave.flush();
  autosave.note(keeping, air(1));
  await autosave.flush();
  expect(backend.writes).toBe(1);
});

test('two tabs: the second writer is held back and nothing is overwritten', async () => {
  const [mine, theirs] = [tab(), tab()];
  const keeping = newKeeping('Yard');
  mine.autosave.note(keeping, air(1));
  await mine.autosave.flush();
  const same = await inAnotherTab(keeping);
  theirs.autosave.note(same, air(2));
  await theirs.autosave.flush();
  mine.autosave.note(keeping, air(3));
  await mine.autosave.flush();
  expect(mine.outcomes.at(-1)).toEqual({ kind: 'overtaken' });
  expect(airOf(keeping.overtaken!.text)).toBe(2);
  // However long it goes on.
  mine.autosave.note(keeping, air(4));
  await mine.autosave.flush();
  expect(airOf((await store.read(keeping.id))!.text)).toBe(2);
});

test('another tab that only listened to another mount is no conflict', async () => {
  const [mine, theirs] = [tab(), tab()];
  const keeping = newKeeping('Yard');
  mine.autosave.note(keeping, air(1));
  await mine.autosave.flush();
  const heard = (index: number) => ({ ...air(1), view: { ...air(1).view, heard: index } });
  theirs.autosave.note(await inAnotherTab(keeping), heard(2));
  await theirs.autosave.flush();
  mine.autosave.note(keeping, heard(3));
  await mine.autosave.flush();
  await mine.autosave.flush();
  expect(keeping.overtaken).toBeNull();
  expect(readBenchFile((await store.read(keeping.id))!.text).view.heard).toBe(3);
});

test('a full store is told once a write, nothing is lost, and all is kept when there is room again', async () => {
  const { autosave, outcomes } = tab();
  const keeping = newKeeping('Yard');
  backend.refuse = new DOMException('no room', 'QuotaExceededError');
  autosave.note(keeping, air(1));
  await autosave.flush();
  expect(outcomes).toEqual([{ kind: 'refused', sentence: expect.stringContaining('store is full') }]);
  backend.refuse = null;
  await autosave.flush();
  expect(airOf((await store.read(keeping.id))!.text)).toBe(1);
  expect(outcomes.at(-1)).toEqual({ kind: 'kept' });
});

test('a bench that cannot be written as it is says what is wrong with it', async () => {
  const { autosave, outcomes } = tab();
  autosave.note(newKeeping('Yard'), air(NaN));
  await autosave.flush();
  expect(outcomes[0]).toMatchObject({
    kind: 'refused',
    sentence: expect.stringContaining('air.temperatureC')
  });
  expect(backend.writes).toBe(0);
});

test('a bench that another tab has deleted is kept again by whoever works on it', async () => {
  const { autosave } = tab();
  const keeping = newKeeping('Yard');
  autosave.note(keeping, air(1));
  await autosave.flush();
  await store.remove(keeping.id);
  autosave.note(keeping, air(2));
  await autosave.flush();
  expect(airOf((await store.read(keeping.id))!.text)).toBe(2);
});

test('an emergency save reaches the store at the next start', async () => {
  const { autosave, emergency } = tab();
  const keeping = newKeeping('Yard');
  autosave.note(keeping, air(1));
  autosave.saveInEmergency();
  // The page is gone before its timer ever rings.
  vi.clearAllTimers();
  expect(await carryOver(store, new EmergencySave(() => shelf))).toEqual([]);
  expect(airOf((await store.read(keeping.id))!.text)).toBe(1);
  expect(await store.last()).toBe(keeping.id);
  expect(emergency.found().size).toBe(0);
});

test('a page that goes in the middle of a write leaves no double', async () => {
  const { autosave } = tab();
  const keeping = newKeeping('Yard');
  autosave.note(keeping, air(1));
  await autosave.flush();
  autosave.note(keeping, air(2));
  backend.delay = () => new Promise(() => undefined);
  void autosave.flush();
  await vi.advanceTimersByTimeAsync(0);
  autosave.note(keeping, air(3));
  autosave.saveInEmergency();
  backend.delay = async () => undefined;
  expect(await carryOver(store, new EmergencySave(() => shelf))).toEqual([]);
  const kept = await store.list();
  expect(kept.map(({ text }) => airOf(text))).toEqual([3]);
});

test('an emergency save that another tab has overtaken gets a name of its own', async () => {
  const [mine, theirs] = [tab(), tab()];
  const keeping = newKeeping('Yard');
  mine.autosave.note(keeping, air(1));
  await mine.autosave.flush();
  theirs.autosave.note(await inAnotherTab(keeping), air(2));
  await theirs.autosave.flush();
  mine.autosave.note(keeping, air(3));
  mine.autosave.saveInEmergency();
  expect(await carryOver(store, new EmergencySave(() => shelf))).toEqual(['Yard 2']);
  const kept = Object.fromEntries((await store.list()).map(({ name, text }) => [name, airOf(text)]));
  expect(kept).toEqual({ Yard: 2, 'Yard 2': 3 });
});

test('a small store that is refused, full or full of nonsense harms nothing', () => {
  const refused = new EmergencySave(() => {
    throw new DOMException('no', 'SecurityError');
  });
  expect(() => refused.leave({ id: 'a', name: 'b', text: 'c', known: [] })).not.toThrow();
  expect(refused.found().size).toBe(0);
  for (const nonsense of ['', 'null', '{', '[]', '{"id":1}', '{"id":"a","name":"b"}'])
    shelf.setItem(`backwave last emergency ${nonsense}`, nonsense);
  shelf.setItem('somebody else’s', '{"id":"a","name":"b","text":"c"}');
  expect(new EmergencySave(() => shelf).found().size).toBe(0);
});

/** What two tabs may do with one bench, in any order. */
type Step = { tab: 0 | 1; what: 'edit' | 'flush' | 'leave'; value: number };
const anyStep: fc.Arbitrary<Step> = fc
  .record({
    tab: fc.constantFrom(0 as const, 1 as const),
    what: fc.constantFrom('edit' as const, 'edit' as const, 'flush' as const, 'leave' as const),
    value: fc.integer({ min: -15, max: 24 })
  })
  // Even ones here, odd ones there: the same work in both tabs is one work, and whoever edits on takes it along.
  .map(({ tab, what, value }) => ({ tab, what, value: 2 * value + tab }));

test('whatever two tabs do, the last edit of each is in the store at the end', async () => {
  vi.useRealTimers();
  await fc.assert(
    fc.asyncProperty(fc.array(anyStep, { maxLength: 14 }), async (steps) => {
      backend = new MemoryStore();
      store = new BenchStore(backend);
      shelf = memoryShelf();
      const keeping = newKeeping('Yard');
      const first = tab();
      first.autosave.note(keeping, air(55));
      await first.autosave.flush();
      const tabs = [first, tab()];
      const keepings = [keeping, await inAnotherTab(keeping)];
      const last: (number | null)[] = [null, null];
      for (const { tab: which, what, value } of steps) {
        const { autosave } = tabs[which];
        if (what === 'edit') {
          autosave.note(keepings[which], air(value));
          last[which] = value;
        } else if (what === 'flush') await autosave.flush();
        else autosave.saveInEmergency();
      }
      for (const { autosave } of tabs) {
        autosave.saveInEmergency();
        await autosave.flush();
      }
      await carryOver(store, new EmergencySave(() => shelf));
      const kept = (await store.list()).map(({ text }) => airOf(text));
      for (const value of last) if (value !== null) expect(kept).toContain(value);
    }),
    { numRuns: 60 }
  );
}, 60_000);
