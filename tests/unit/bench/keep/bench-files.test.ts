import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { BENCH_VERSION } from '../../../../src/lib/file/versions/versions.js';
import { demoBenchText } from '../../../helpers/demo-bench-text.js';
import { handleOf, MemoryBrowser, type Tab } from '../../../helpers/kept-tab.js';

const soon = () => vi.advanceTimersByTimeAsync(1000);
const file = (name: string, text: string) => ({ file: new File([text], name), handle: null });

let browser: MemoryBrowser;
let tab: Tab;

beforeEach(async () => {
  vi.useFakeTimers();
  browser = new MemoryBrowser();
  tab = await browser.tab();
});
afterEach(() => void vi.useRealTimers());

describe('BenchFiles', () => {
  it('saves and opens in a round trip; opening is undone with its name', async () => {
    tab.widen(64);
    await tab.keeper.benches.saveUnder('No. 41: cab/roof');
    await tab.keeper.files.save();
    const [{ name, text }] = tab.disk.saved;
    expect(name).toBe('No. 41- cab-roof.backwave.json');
    expect(tab.status.said).toBe('Saved to No. 41- cab-roof.backwave.json.');
    tab.widen(99);
    await soon();
    tab.disk.picks = file(name, text);
    await tab.keeper.files.pick();
    expect([tab.width, tab.status.name]).toEqual([64, 'No. 41- cab-roof']);
    expect(tab.status.said).toBe('No. 41- cab-roof.backwave.json is on the bench.');
    tab.does((bench) => bench.undo());
    expect([tab.width, tab.status.name]).toEqual([99, 'No. 41: cab/roof']);
  });

  it('keeps a file that was opened as a bench of its own', async () => {
    await tab.keeper.files.open(file('layout.backwave.json', demoBenchText()));
    tab.keeper.look();
    expect([tab.bench.stands.length, tab.status.name, tab.status.state]).toEqual([5, 'layout', 'new']);
    await soon();
    expect([tab.status.state, tab.names()]).toEqual(['kept', ['layout']]);
  });

  it('makes no second bench of the same file, but one of a file that only has the same name', async () => {
    for (const text of [demoBenchText(), demoBenchText(), demoBenchText((b) => (b.air.temperatureC = 3))]) {
      await tab.keeper.files.open(file('layout.json', text));
      tab.keeper.look();
      await soon();
    }
    expect(tab.names().sort()).toEqual(['layout', 'layout 2']);
  });

  it('writes to the same file again where the browser lets it, to another when asked', async () => {
    const [yard, other] = [handleOf('yard.backwave.json'), handleOf('other.json')];
    tab.widen(64);
    tab.disk.savesTo = yard;
    await tab.keeper.files.save();
    expect([tab.status.said, tab.status.fileOpen]).toEqual([
      'Saved to yard.backwave.json.',
      'yard.backwave.json'
    ]);
    tab.disk.savesTo = new Error('asked for a file though one is open');
    tab.widen(68);
    await tab.keeper.files.save();
    expect(tab.status.said).toBe('Saved to yard.backwave.json.');
    tab.disk.savesTo = other;
    await tab.keeper.files.save(true);
    expect(tab.status.fileOpen).toBe('other.json');
    expect(tab.disk.saved.map(({ text }) => JSON.parse(text).setups[1].mount.width)).toEqual([
      0.064, 0.068, 0.068
    ]);
  });

  it('writes back to the file that was opened, until the bench goes by another name', async () => {
    const yard = handleOf('yard.json');
    await tab.keeper.files.open({ ...file('yard.json', demoBenchText()), handle: yard });
    expect(tab.status.fileOpen).toBe('yard.json');
    await tab.keeper.benches.saveUnder('Main line');
    expect(tab.status.fileOpen).toBeNull();
  });

  it('says and does nothing where the user closes the picker', async () => {
    tab.widen(64);
    tab.disk.savesTo = null;
    await tab.keeper.files.save();
    await tab.keeper.files.pick();
    expect([tab.disk.saved, tab.status.said, tab.status.fileProblem]).toEqual([[], null, null]);
    expect(tab.width).toBe(64);
  });

  it('says in one sentence what a disk refuses', async () => {
    tab.widen(64);
    tab.disk.savesTo = new Error('the disk is full');
    await tab.keeper.files.save();
    expect(tab.status.fileProblem).toBe(
      '“My bench” was not saved to a file: the disk is full. Try another place.'
    );
    tab.disk.picks = new Error('no permission');
    await tab.keeper.files.pick();
    expect(tab.status.fileProblem).toBe(
      'The file could not be opened: no permission. The bench is as it was.'
    );
  });

  it.each([
    { what: 'no JSON', text: '{"format": ', says: /not JSON/ },
    { what: 'empty', text: '', says: /is empty/ },
    {
      what: 'a newer version',
      text: demoBenchText((b) => (b.version = BENCH_VERSION + 1)),
      says: new RegExp(`of version ${BENCH_VERSION + 1}`)
    },
    { what: 'nested deep', text: '['.repeat(100_000), says: /nested more than 16 levels/ },
    {
      what: 'a million setups',
      text: `{"format":"backwave-bench","version":1,"speakers":{},"setups":[${'{},'.repeat(999_999)}{}]}`,
      says: /million characters long/
    },
    {
      what: 'prototype keys',
      text: demoBenchText().replace('{', '{"__proto__":{"polluted":1},'),
      says: /unknown key "__proto__"/
    },
    {
      what: 'seven mounts',
      text: demoBenchText((b) => b.setups.push(b.setups[0], b.setups[0])),
      says: /holds 7 mounts; the shelf has room for 6/
    }
  ])('refuses in one sentence and leaves the bench as it was: $what', async ({ text, says }) => {
    const before = tab.bench.file;
    await tab.keeper.files.open(file('bad.json', text));
    expect(tab.status.fileProblem).toMatch(says);
    expect(tab.status.fileProblem).toMatch(/^\S+ could not be opened: .*\. The bench is as it was\.$/);
    expect(tab.bench.file).toBe(before);
    expect([tab.status.state, tab.status.said]).toEqual(['demo', null]);
    expect({} as { polluted?: 1 }).toEqual({});
    // What is opened after that says nothing of it any more.
    await tab.keeper.files.open(file('good.json', demoBenchText()));
    expect([tab.status.fileProblem, tab.status.said]).toEqual([null, 'good.json is on the bench.']);
  });
});
