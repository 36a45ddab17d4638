import { readFileSync } from 'node:fs';
import { afterEach, expect, test, vi } from 'vitest';
import { noteSeen, seenBefore } from '../../../../src/lib/screens/parts/seen-before.js';

/** A browser's page as far as it is asked: the classes of its root, and what its store holds. */
function browserWith(held: Map<string, string> | null): Set<string> {
  const classes = new Set<string>();
  const classList = {
    add: (name: string) => classes.add(name),
    contains: (name: string) => classes.has(name)
  };
  const store = held && {
    getItem: (key: string) => held.get(key) ?? null,
    setItem: (key: string, value: string) => void held.set(key, value)
  };
  vi.stubGlobal('document', { documentElement: { classList } });
  vi.stubGlobal('localStorage', store ?? undefined);
  return classes;
}

/** What stands before the page's first paint. */
const first = new Function(readFileSync('static/begin.js', 'utf8'));

afterEach(() => vi.unstubAllGlobals());

test('the next page knows by its first script that this one came to its first sound', () => {
  const held = new Map<string, string>();
  browserWith(held);
  first();
  expect(seenBefore()).toBe(false);
  noteSeen();
  expect(seenBefore()).toBe(true);
  browserWith(held);
  expect(seenBefore()).toBe(false);
  first();
  expect(seenBefore()).toBe(true);
});

test('a browser that keeps nothing waits every time, and a page being made waits too', () => {
  browserWith(null);
  expect(first).not.toThrow();
  expect(noteSeen).not.toThrow();
  expect(seenBefore()).toBe(true);
  vi.unstubAllGlobals();
  expect(seenBefore()).toBe(false);
});
