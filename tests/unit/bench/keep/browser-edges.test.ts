import { afterEach, describe, expect, it, vi } from 'vitest';
import { isFetching, noteReturning, showBench, watchPage } from '../../../../src/lib/bench/keep/page-life.js';
import { BrowserChannel, type Told } from '../../../../src/lib/bench/keep/tab-channel.js';
import { TabMemory } from '../../../../src/lib/bench/keep/tab-memory.js';
import { memoryShelf } from '../../../helpers/memory-store.js';

afterEach(() => void vi.unstubAllGlobals());

describe('TabMemory', () => {
  it('remembers through a reload, under the key of earlier versions', () => {
    const store = memoryShelf();
    vi.stubGlobal('sessionStorage', store);
    new TabMemory().bench = 'a';
    expect([new TabMemory().bench, store.getItem('backwave bench')]).toEqual(['a', 'a']);
    new TabMemory().bench = null;
    expect(new TabMemory().bench).toBeNull();
  });

  it('remembers as long as the page lives where the browser keeps nothing', () => {
    vi.stubGlobal('sessionStorage', undefined);
    const memory = new TabMemory();
    memory.bench = 'a';
    expect([memory.bench, new TabMemory().bench]).toEqual(['a', null]);
  });
});

describe('BrowserChannel', () => {
  it('tells the other tabs and not itself, until it is closed', async () => {
    const heard: [string, Told][] = [];
    const [first, second] = [new BrowserChannel(), new BrowserChannel()];
    const close = first.open((told) => heard.push(['first', told]));
    const closeSecond = second.open((told) => heard.push(['second', told]));
    first.tell({ id: 'a', stamp: 'b' });
    await vi.waitFor(() => expect(heard).toEqual([['second', { id: 'a', stamp: 'b' }]]));
    close();
    first.tell({ id: 'a', stamp: 'c' });
    second.tell({ id: 'a', stamp: null });
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(heard).toHaveLength(1);
    closeSecond();
  });

  it('says nothing and hears nothing where there is no line', () => {
    vi.stubGlobal('BroadcastChannel', undefined);
    const channel = new BrowserChannel();
    const close = channel.open(() => expect.unreachable());
    channel.tell({ id: 'a', stamp: 'b' });
    close();
  });
});

describe('the life of the page', () => {
  it('tells when the page is hidden, shown and left, until it is no longer asked', () => {
    const [doc, win] = [Object.assign(new EventTarget(), { visibilityState: 'hidden' }), new EventTarget()];
    vi.stubGlobal('document', doc);
    vi.stubGlobal('window', win);
    const told: string[] = [];
    const end = watchPage({
      hidden: () => told.push('hidden'),
      shown: () => told.push('shown'),
      left: () => told.push('left')
    });
    doc.dispatchEvent(new Event('visibilitychange'));
    doc.visibilityState = 'visible';
    doc.dispatchEvent(new Event('visibilitychange'));
    win.dispatchEvent(new Event('pagehide'));
    end();
    doc.dispatchEvent(new Event('visibilitychange'));
    win.dispatchEvent(new Event('pagehide'));
    expect(told).toEqual(['hidden', 'shown', 'left']);
  });

  it('lets the next page know that a bench is kept, by the key that its first script asks for', () => {
    const store = memoryShelf();
    vi.stubGlobal('localStorage', store);
    noteReturning();
    expect(store.getItem('backwave keeps a bench')).toBe('yes');
    vi.stubGlobal('localStorage', undefined);
    expect(noteReturning).not.toThrow();
  });

  it('holds the page back no longer', () => {
    const classes = new Set(['fetching']);
    const classList = {
      remove: (name: string) => classes.delete(name),
      contains: (name: string) => classes.has(name)
    };
    vi.stubGlobal('document', { documentElement: { classList } });
    expect(isFetching()).toBe(true);
    showBench();
    expect([isFetching(), classes.size]).toEqual([false, 0]);
    vi.stubGlobal('document', undefined);
    expect(isFetching()).toBe(false);
  });
});
