import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { MemoryBrowser, type Tab } from '../../../helpers/kept-tab.js';

const soon = () => vi.advanceTimersByTimeAsync(1000);

let browser: MemoryBrowser;
let tab: Tab;

beforeEach(async () => {
  vi.useFakeTimers();
  browser = new MemoryBrowser();
  tab = await browser.tab();
  tab.widen(60);
  await soon();
});
afterEach(() => void vi.useRealTimers());

describe('KeptBenches', () => {
  it('goes on under another name, and the old one stays as it was', async () => {
    expect(await tab.keeper.benches.saveUnder('Yard')).toBeNull();
    expect([tab.status.name, tab.status.said, tab.status.state]).toEqual(['Yard', 'Kept as “Yard”.', 'kept']);
    tab.widen(110);
    await soon();
    await tab.keeper.benches.open(tab.id('My bench'));
    expect([tab.status.name, tab.width]).toEqual(['My bench', 60]);
  });

  it('undoes the opening of a bench with its name, and each goes on in its own record', async () => {
    await tab.keeper.benches.saveUnder('Yard');
    tab.widen(110);
    await soon();
    await tab.keeper.benches.open(tab.id('My bench'));
    tab.does((bench) => bench.undo());
    expect([tab.status.name, tab.width]).toEqual(['Yard', 110]);
    tab.does((bench) => bench.redo());
    expect([tab.status.name, tab.width]).toEqual(['My bench', 60]);
    tab.widen(61);
    await soon();
    const kept = await browser.tab();
    for (const [name, width] of [
      ['Yard', 110],
      ['My bench', 61]
    ] as const) {
      await kept.keeper.benches.open(kept.id(name));
      expect([name, kept.width]).toEqual([name, width]);
    }
  });

  it('renames what is on the bench, in the list and in the store', async () => {
    const id = tab.id('My bench');
    expect(await tab.keeper.benches.rename(' Main line\n')).toBeNull();
    expect([tab.status.name, tab.names()]).toEqual(['Main line', ['Main line']]);
    expect((await browser.store.read(id))?.name).toBe('Main line');
  });

  it.each([
    ['My bench', 'another bench is called “My bench” already'],
    ['  ', 'a bench needs a name'],
    ['\u0007', 'a bench needs a name']
  ])('refuses the name %j: %s', async (name, sentence) => {
    expect(await tab.keeper.benches.saveUnder(name)).toBe(sentence);
    expect(tab.status.name).toBe('My bench');
  });

  it('lets a bench be renamed to its own name and to none that another has', async () => {
    await tab.keeper.benches.saveUnder('Yard');
    expect(await tab.keeper.benches.rename('Yard')).toBeNull();
    expect(await tab.keeper.benches.rename('My bench')).toBe('another bench is called “My bench” already');
    expect(tab.status.name).toBe('Yard');
  });

  it('deletes a bench, which is gone after a reload', async () => {
    await tab.keeper.benches.remove(tab.id('My bench'));
    expect([tab.names(), tab.status.name, tab.status.state]).toEqual([[], 'The demo bench', 'demo']);
    expect(tab.keeper.benches.deleted?.name).toBe('My bench');
    const next = await tab.reload();
    expect([next.names(), next.status.state]).toEqual([[], 'demo']);
  });

  it('brings a deleted bench back by its button', async () => {
    const id = tab.id('My bench');
    await tab.keeper.benches.remove(id);
    await tab.keeper.benches.bringBack();
    expect([tab.names(), tab.keeper.benches.deleted]).toEqual([['My bench'], null]);
    await tab.keeper.benches.open(id);
    expect([tab.width, tab.status.state]).toEqual([60, 'kept']);
  });

  it('brings a deleted bench back by undo, too', async () => {
    await tab.keeper.benches.remove(tab.id('My bench'));
    tab.does((bench) => bench.undo());
    expect([tab.width, tab.status.state]).toEqual([60, 'new']);
    await soon();
    expect([tab.status.state, tab.names()]).toEqual(['kept', ['My bench']]);
    // The button after that makes no double and overwrites nothing.
    tab.widen(62);
    await soon();
    await tab.keeper.benches.bringBack();
    expect(tab.names()).toEqual(['My bench']);
    expect((await tab.reload()).width).toBe(62);
  });

  it('leaves a bench where it was when the store refuses to delete it', async () => {
    await tab.keeper.benches.saveUnder('Yard');
    const id = tab.id('My bench');
    browser.backend.refuse = new DOMException('no', 'InvalidStateError');
    await tab.keeper.benches.remove(id);
    expect(tab.status.problem).toContain('lets nothing be kept');
    expect(tab.keeper.benches.deleted).toBeNull();
    browser.backend.refuse = null;
    await tab.keeper.list.refresh();
    expect(tab.names()).toContain('My bench');
  });

  it('puts the demo bench on as it came, and the bench before it is not lost', async () => {
    tab.keeper.benches.openDemo();
    tab.keeper.look();
    expect([tab.status.state, tab.width]).toEqual(['demo', 102]);
    tab.widen(103);
    await soon();
    expect([tab.status.state, tab.status.name]).toEqual(['kept', 'My bench 2']);
    await tab.keeper.benches.open(tab.id('My bench'));
    expect(tab.width).toBe(60);
  });

  it('says so where a bench of the list is gone', async () => {
    const id = tab.id('My bench');
    await tab.keeper.benches.saveUnder('Yard');
    await browser.store.remove(id);
    await tab.keeper.benches.open(id);
    expect(tab.status.fileProblem).toBe('This bench is no longer in the browser’s store.');
    expect([tab.status.name, tab.names()]).toEqual(['Yard', ['Yard']]);
  });

  it('deletes the recording with its bench, and brings it back with it', async () => {
    const id = tab.id('My bench');
    await browser.recordings.keep(id, new File(['chuff'], 'chuffs.wav'));
    await tab.keeper.benches.remove(id);
    expect(await browser.recordings.read(id)).toBeNull();
    await tab.keeper.benches.bringBack();
    expect((await browser.recordings.read(id))?.name).toBe('chuffs.wav');
  });
});
