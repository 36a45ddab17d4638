import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { MemoryBrowser, type Tab } from '../../../helpers/kept-tab.js';

const soon = () => vi.advanceTimersByTimeAsync(1000);

let browser: MemoryBrowser;
let mine: Tab;
let theirs: Tab;

/** Two tabs with one bench on, 50 mm wide. */
beforeEach(async () => {
  vi.useFakeTimers();
  browser = new MemoryBrowser();
  mine = await browser.tab();
  mine.widen(50);
  await soon();
  theirs = await browser.tab();
});
afterEach(() => void vi.useRealTimers());

describe('TabConflict', () => {
  it('stops keeping a bench that another tab has written, and overwrites nothing', async () => {
    expect(theirs.width).toBe(50);
    theirs.widen(55);
    await soon();
    expect([theirs.status.state, mine.status.state]).toEqual(['kept', 'overtaken']);
    mine.widen(52);
    await soon();
    expect([mine.width, mine.status.state]).toEqual([52, 'overtaken']);
    expect((await browser.tab()).width).toBe(55);
  });

  it('takes theirs as a step that can be undone, and then the other tab is asked', async () => {
    theirs.widen(55);
    await soon();
    mine.widen(52);
    await soon();
    await mine.keeper.conflict.takeTheirs();
    expect([mine.width, mine.status.state]).toEqual([55, 'kept']);
    mine.does((bench) => bench.undo());
    await soon();
    expect([mine.width, mine.status.state, theirs.status.state]).toEqual([52, 'kept', 'overtaken']);
  });

  it('keeps mine under another name, and both are there after a reload', async () => {
    theirs.widen(55);
    await soon();
    mine.widen(52);
    await mine.keeper.conflict.keepMine();
    expect([mine.status.name, mine.status.state]).toEqual(['My bench 2', 'kept']);
    const [again, other] = [await mine.reload(), await theirs.reload()];
    expect([again.status.name, again.width]).toEqual(['My bench 2', 52]);
    expect([other.status.name, other.width]).toEqual(['My bench', 55]);
  });

  it('finds the other tab’s stamp with the next change where there is no line', async () => {
    browser.connected = false;
    theirs.widen(55);
    await soon();
    expect(mine.status.state).toBe('kept');
    mine.widen(52);
    await soon();
    expect(mine.status.state).toBe('overtaken');
    // Closed without a choice: mine is kept under another name.
    mine.close();
    const next = await theirs.reload();
    expect([next.width, next.names().sort()]).toEqual([55, ['My bench', 'My bench 2']]);
    await next.keeper.benches.open(next.id('My bench 2'));
    expect(next.width).toBe(52);
  });

  it('finds it, too, when the page is looked at again', async () => {
    browser.connected = false;
    theirs.widen(55);
    await soon();
    await mine.keeper.conflict.look();
    expect(mine.status.state).toBe('overtaken');
  });

  it('takes no notice of another mount heard there, nor of the same work', async () => {
    theirs.does((bench) => bench.hear(3));
    await soon();
    expect(mine.status.state).toBe('kept');
    mine.widen(51);
    await soon();
    expect([mine.status.state, theirs.status.state]).toEqual(['kept', 'overtaken']);
  });

  it('tells of a deletion in another tab; the next change keeps the bench again', async () => {
    await theirs.keeper.benches.remove(theirs.id('My bench'));
    await soon();
    expect(mine.status.said).toBe('Another tab has deleted this bench; the next change here keeps it again.');
    expect([mine.status.state, mine.names()]).toEqual(['new', []]);
    mine.widen(53);
    await soon();
    expect([mine.status.state, mine.names(), theirs.names()]).toEqual(['kept', ['My bench'], ['My bench']]);
  });

  it('has the list of every tab know of a new bench', async () => {
    await theirs.keeper.benches.saveUnder('Yard');
    await soon();
    expect(mine.names()).toEqual(['Yard', 'My bench']);
    expect(mine.status.state).toBe('kept');
  });

  it('leaves it to the next change to tell where the store refuses to be looked into', async () => {
    vi.spyOn(browser.backend, 'get').mockRejectedValue(new Error('closed'));
    await mine.keeper.conflict.look();
    expect([mine.status.state, mine.status.problem]).toEqual(['kept', null]);
  });
});
