import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { readBenchFile } from '../../../../src/lib/file/read-bench-file.js';
import { demoBenchText } from '../../../helpers/demo-bench-text.js';
import { MemoryBrowser, Tab } from '../../../helpers/kept-tab.js';

/** Longer than any change takes to be kept, and than changes of one kind join. */
const soon = () => vi.advanceTimersByTimeAsync(1000);

let browser: MemoryBrowser;

beforeEach(() => {
  vi.useFakeTimers();
  browser = new MemoryBrowser();
});
afterEach(() => void vi.useRealTimers());

describe('Keeper', () => {
  it('starts at the demo bench, and listening alone makes no bench', async () => {
    const tab = await browser.tab();
    tab.does((bench) => bench.hear(2));
    await soon();
    expect([tab.status.state, tab.status.name, tab.status.current]).toEqual(['demo', 'The demo bench', null]);
    expect(browser.backend.writes).toBe(0);
    tab.widen(77);
    await soon();
    expect([tab.status.state, browser.backend.writes > 0]).toEqual(['kept', true]);
  });

  it('keeps the first change under a name, and brings it back with what was heard', async () => {
    const tab = await browser.tab();
    tab.widen(77);
    expect([tab.status.state, tab.status.name]).toEqual(['new', 'My bench']);
    await soon();
    expect(tab.status.state).toBe('kept');
    expect(tab.status.current).toBe(tab.id('My bench'));
    const next = await tab.reload();
    expect([next.width, next.bench.heard.index]).toEqual([77, 1]);
    await soon();
    expect([next.status.name, next.status.state]).toEqual(['My bench', 'kept']);
    // Where one begins is no step back.
    expect(next.bench.canUndo).toBe(false);
  });

  it('says that a change waits until it is kept', async () => {
    const tab = await browser.tab();
    tab.widen(77);
    await soon();
    tab.widen(78);
    expect(tab.status.state).toBe('waiting');
    await soon();
    expect(tab.status.state).toBe('kept');
  });

  it('keeps what is changed in the very moment before a reload, and makes no second bench of it', async () => {
    let tab = await browser.tab();
    for (const width of [81, 82, 83]) {
      tab.widen(width);
      tab = await tab.reload();
      expect(tab.width).toBe(width);
    }
    expect(tab.names()).toEqual(['My bench']);
  });

  it('has it in the store within half a second, for a tab that is killed without a word', async () => {
    const tab = await browser.tab();
    tab.widen(91);
    await vi.advanceTimersByTimeAsync(500);
    const next = await browser.tab();
    expect(next.width).toBe(91);
  });

  it('brings back what this tab had on, not what was on last in another', async () => {
    const [first, second] = [await browser.tab(), await browser.tab()];
    first.widen(60);
    await soon();
    second.widen(70);
    await soon();
    expect(second.status.name).toBe('My bench 2');
    // One that had nothing on gets what was on last.
    expect((await browser.tab()).width).toBe(70);
    expect((await first.reload()).width).toBe(60);
  });

  it('leaves what was changed before the store had answered one step back, and keeps it', async () => {
    const before = await browser.tab();
    before.widen(60);
    await soon();
    const tab = new Tab(browser, null);
    const starting = tab.keeper.start();
    tab.widen(75);
    await starting;
    expect([tab.width, tab.status.name]).toEqual([60, 'My bench']);
    tab.does((bench) => bench.undo());
    await soon();
    expect([tab.width, tab.status.name, tab.status.state]).toEqual([75, 'My bench 2', 'kept']);
    expect(tab.names().sort()).toEqual(['My bench', 'My bench 2']);
  });

  it('tells of a full store, goes on, and tells when all is kept again', async () => {
    const tab = await browser.tab();
    tab.widen(70);
    await soon();
    browser.backend.refuse = new DOMException('no room', 'QuotaExceededError');
    tab.widen(75);
    await soon();
    expect(tab.status.state).toBe('refused');
    expect(tab.status.problem).toBe(
      'The browser’s store is full: your last changes are not kept in it. Go on working and save this bench to a file, or delete benches you no longer need.'
    );
    await expect(tab.keeper.makeSure()).rejects.toThrow('store is full');
    tab.widen(76);
    expect([tab.width, tab.status.state]).toEqual([76, 'refused']);
    browser.backend.refuse = null;
    tab.widen(78);
    await soon();
    expect([tab.status.state, tab.status.problem]).toEqual(['kept', null]);
    expect((await browser.tab()).width).toBe(78);
  });

  it('tells of a browser that keeps nothing, and the bench works', async () => {
    for (const call of ['get', 'values', 'update', 'del'] as const)
      vi.spyOn(browser.backend, call).mockRejectedValue(new TypeError('no indexedDB'));
    const tab = await browser.tab();
    expect([tab.status.state, tab.status.problem]).toEqual([
      'demo',
      expect.stringContaining('lets nothing be kept')
    ]);
    tab.widen(70);
    await soon();
    expect([tab.width, tab.status.state]).toEqual([70, 'refused']);
    await tab.keeper.files.save();
    expect(JSON.parse(tab.disk.saved[0].text).setups[1].mount.width).toBe(0.07);
  });

  it('makes sure that the work is kept before the page goes', async () => {
    const tab = await browser.tab();
    tab.widen(64);
    await tab.keeper.makeSure();
    expect((await browser.tab()).width).toBe(64);
  });

  it('leaves what a newer program has kept as it is, says why, and takes another name', async () => {
    const tab = await browser.tab();
    tab.widen(64);
    await soon();
    const id = tab.id('My bench');
    const newer = demoBenchText((bench) => (bench.version = 9));
    const before = (await browser.store.read(id))!;
    browser.backend.held.set(`bench ${id}`, { ...before, text: newer, stamp: 'newer' });
    const next = await browser.tab(id);
    expect(next.status.state).toBe('demo');
    expect(next.status.fileProblem).toMatch(/^“My bench” could not be opened: .*of version 9/);
    expect(next.status.fileProblem).toMatch(
      /It lies in this browser as it was; in the list of benches it can be saved to a file\.$/
    );
    expect(next.keeper.list.entries[0].problem).toContain('of version 9');
    next.widen(71);
    await soon();
    expect(next.status.name).toBe('My bench 2');
    await next.keeper.files.saveKept(id);
    expect(next.disk.saved).toEqual([{ name: 'My bench.backwave.json', text: newer }]);
    expect((await browser.store.read(id))!.text).toBe(newer);
  });

  it('says so where another tab had the last word on what was left behind', async () => {
    const mine = await browser.tab();
    mine.widen(50);
    await soon();
    const theirs = await browser.tab();
    browser.connected = false;
    theirs.widen(55);
    await soon();
    mine.widen(52);
    mine.close();
    const next = await browser.tab(mine.memory.bench);
    expect(next.status.said).toBe(
      'Another tab had the last word on a bench; what was changed here is kept as “My bench 2”.'
    );
    expect(next.width).toBe(55);
    await next.keeper.benches.open(next.id('My bench 2'));
    expect(next.width).toBe(52);
  });
});

it('keeps what is worked on, whatever is shown in its place for a while, and saves it too', async () => {
  const tab = await browser.tab();
  tab.widen(60);
  const work = tab.bench.file;
  tab.does((bench) => bench.perform(demoBench()));
  tab.widen(90);
  expect([tab.width, tab.bench.work === work]).toEqual([90, true]);
  await tab.keeper.files.save();
  expect(readBenchFile(tab.disk.saved[0].text)).toEqual(work);
  const again = await tab.reload();
  expect([again.width, again.bench.performing]).toEqual([60, false]);
});
