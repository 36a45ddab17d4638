import { flushSync } from 'svelte';
import { afterEach, expect, test, vi } from 'vitest';
import { aTaskLater, untilNextFrame } from '../../../src/lib/bench/a-task-later.svelte.js';
import { aTurn } from '../../helpers/a-turn.js';

let end = (): void => undefined;
afterEach(() => {
  end();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

/** A value that the test changes, read a task later, and what was drawn of it. */
function later(pause?: () => Promise<void>) {
  let value = $state(0);
  const drawn: number[] = [];
  let reads = 0;
  end = $effect.root(() => {
    const shown = aTaskLater(() => {
      reads++;
      return value;
    }, pause);
    $effect(() => {
      drawn.push(shown.current);
    });
  });
  flushSync();
  const set = (next: number): void => {
    value = next;
    flushSync();
  };
  return { set, drawn, reads: () => reads };
}

test('a change is drawn a task later', async () => {
  const { set, drawn } = later();
  set(1);
  expect(drawn).toEqual([0]);
  await aTurn();
  expect(drawn).toEqual([0, 1]);
});

test('several changes at once are drawn once, as they are at last', async () => {
  const { set, drawn } = later();
  for (const next of [1, 2, 3]) set(next);
  await aTurn();
  await aTurn();
  expect(drawn).toEqual([0, 3]);
});

test('what was taken back before it was drawn is not drawn', async () => {
  const { set, drawn } = later();
  set(1);
  set(0);
  await aTurn();
  expect(drawn).toEqual([0]);
});

test('nothing is drawn of what has gone', async () => {
  const { set, drawn, reads } = later();
  set(1);
  const before = reads();
  end();
  await aTurn();
  expect(drawn).toEqual([0]);
  expect(reads()).toBe(before);
});

test('before the next frame: several changes are in the frame that comes after them, whatever tasks come between', async () => {
  const frames: (() => void)[] = [];
  vi.stubGlobal('requestAnimationFrame', (draw: () => void) => frames.push(draw));
  const { set, drawn } = later(untilNextFrame);
  set(1);
  await aTurn();
  set(2);
  await aTurn();
  expect([drawn, frames.length]).toEqual([[0], 1]);
  frames[0]();
  // Still before the paint: browsers do what was promised as soon as a callback ends.
  await Promise.resolve();
  await Promise.resolve();
  flushSync();
  expect(drawn).toEqual([0, 2]);
});

test('a page out of sight, which has no frames, is drawn all the same', async () => {
  vi.stubGlobal('requestAnimationFrame', () => undefined);
  vi.useFakeTimers();
  const { set, drawn } = later(untilNextFrame);
  set(1);
  await vi.advanceTimersByTimeAsync(99);
  expect(drawn).toEqual([0]);
  await vi.advanceTimersByTimeAsync(1);
  flushSync();
  expect(drawn).toEqual([0, 1]);
});
