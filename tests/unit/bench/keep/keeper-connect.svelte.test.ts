import { flushSync } from 'svelte';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { MemoryBrowser, Tab } from '../../../helpers/kept-tab.js';

const soon = () => vi.advanceTimersByTimeAsync(1000);

let end = (): void => undefined;
let page: EventTarget & { visibilityState: string };

/** As much of a page as keeping asks for. */
beforeEach(() => {
  vi.useFakeTimers();
  const documentElement = { classList: { remove: vi.fn(), contains: (name: string) => name === 'fetching' } };
  page = Object.assign(new EventTarget(), { visibilityState: 'visible', documentElement });
  vi.stubGlobal('document', page);
  vi.stubGlobal('window', new EventTarget());
});
afterEach(() => {
  end();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

/** A tab whose keeper is connected as in the page. */
async function connected(browser: MemoryBrowser): Promise<Tab> {
  const tab = new Tab(browser, null);
  const stop = $effect.root(() => tab.keeper.connect());
  const before = end;
  end = () => (stop(), before());
  flushSync();
  await soon();
  return tab;
}

it('keeps what happens to the bench by itself', async () => {
  const tab = await connected(new MemoryBrowser());
  tab.bench.turnKnob('width', 0.077);
  tab.bench.setTemperature(3);
  flushSync();
  await soon();
  expect([tab.status.state, tab.names()]).toEqual(['kept', ['My bench']]);
});

it('looks at the store again when the page is shown, and keeps at once when it is hidden', async () => {
  const browser = new MemoryBrowser();
  const tab = await connected(browser);
  tab.bench.setTemperature(3);
  flushSync();
  page.visibilityState = 'hidden';
  page.dispatchEvent(new Event('visibilitychange'));
  await vi.advanceTimersByTimeAsync(0);
  expect(tab.status.state).toBe('kept');
  browser.connected = false;
  const other = await browser.tab();
  other.does((bench) => bench.setTemperature(4));
  await soon();
  page.visibilityState = 'visible';
  page.dispatchEvent(new Event('visibilitychange'));
  await soon();
  expect(tab.status.state).toBe('overtaken');
});

it('leaves for the next page what the store has not got when the page is left', async () => {
  const browser = new MemoryBrowser();
  const tab = await connected(browser);
  browser.backend.refuse = new Error('gone');
  tab.bench.setTemperature(3);
  window.dispatchEvent(new Event('pagehide'));
  await soon();
  browser.backend.refuse = null;
  expect((await browser.tab()).bench.file.air.temperatureC).toBe(3);
});

it('is fetching, and lets the page be seen, until the store has answered or refused', async () => {
  const refusing = new MemoryBrowser();
  refusing.backend.refuse = new Error('gone');
  for (const browser of [new MemoryBrowser(), refusing]) {
    expect(new Tab(browser, null).keeper.fetching).toBe(true);
    expect((await connected(browser)).keeper.fetching).toBe(false);
  }
  expect(document.documentElement.classList.remove).toHaveBeenCalledWith('fetching');
});
