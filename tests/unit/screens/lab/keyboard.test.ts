import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import type { Parts } from '../../../../src/lib/screens/lab/command.js';
import { COMMANDS } from '../../../../src/lib/screens/lab/commands.js';
import { Keyboard } from '../../../../src/lib/screens/lab/keyboard.svelte.js';
import { FakeElement, keyPress } from './fake-element.js';

const before = globalThis.Element;
beforeAll(() => void (globalThis.Element = FakeElement as unknown as typeof Element));
afterAll(() => void (globalThis.Element = before));

function keyboard({ hall = false, dialog = false } = {}) {
  const bench = { step: vi.fn(), hear: vi.fn(), undo: vi.fn(), knobs: [], inHand: null };
  const growth = { start: vi.fn(), stop: vi.fn() };
  const sounding = { playing: true, silenced: false, stop: vi.fn(), play: vi.fn(), silence: vi.fn() };
  const projection = { open: hall, toggle: vi.fn(), leave: vi.fn(), invert: vi.fn() };
  const trials = { shown: false };
  const votes = { shown: false };
  const dialogs = { keyList: false };
  const parts = {
    bench,
    growth,
    sounding,
    projection,
    trials,
    votes,
    script: { running: false },
    dialogs,
    page: { still: false, dialogOpen: dialog }
  };
  const keys = new Keyboard(parts as unknown as Parts);
  const press = (code: string, more: Parameters<typeof keyPress>[1] = {}) => {
    const preventDefault = vi.fn();
    keys.press(keyPress(code, { ...more, preventDefault }));
    return { kept: preventDefault.mock.calls.length > 0 };
  };
  return { ...parts, keys, press };
}

test('a key of the lab is kept from the browser, any other is left to it', () => {
  const { bench, press } = keyboard();
  expect(press('Digit2')).toEqual({ kept: true });
  expect(bench.hear).toHaveBeenCalledExactlyOnceWith(1);
  for (const code of ['KeyQ', 'Digit7', 'KeyI', 'Tab']) expect(press(code)).toEqual({ kept: false });
});

test('a key that is held goes on turning and stepping', () => {
  expect(COMMANDS.filter(({ held }) => held).map(({ name }) => name)).toEqual([
    'smaller',
    'larger',
    'smaller by ten',
    'larger by ten',
    'previous',
    'next',
    'next letter',
    'previous letter',
    'a hand more',
    'a hand less'
  ]);
  const { bench, press } = keyboard();
  press('PageDown');
  for (let i = 0; i < 3; i++) press('PageDown', { repeat: true });
  expect(bench.step).toHaveBeenCalledTimes(4);
});

test('a key that is held does anything else once, and is kept from the browser all the same', () => {
  const { sounding, bench, growth, press } = keyboard();
  press('Space');
  expect(press('Space', { repeat: true })).toEqual({ kept: true });
  expect(sounding.stop).toHaveBeenCalledTimes(1);
  expect(press('KeyG', { repeat: true })).toEqual({ kept: true });
  expect(press('', { key: 'z', ctrlKey: true, repeat: true })).toEqual({ kept: true });
  expect([growth.start.mock.calls.length, bench.undo.mock.calls.length]).toEqual([0, 0]);
});

test('a key takes over from a growing plate, but looking at it does not', () => {
  const { growth, press } = keyboard({ hall: true });
  press('KeyI');
  press('KeyP');
  press('', { key: '?' });
  press('Escape', { key: 'Escape' });
  expect(growth.stop).not.toHaveBeenCalled();
  press('Digit2');
  press('Period');
  expect(growth.stop).toHaveBeenCalledTimes(2);
});

test('the plate stops before it grows anew', () => {
  const { growth, press } = keyboard();
  press('KeyG');
  expect(growth.stop.mock.invocationCallOrder[0]).toBeLessThan(growth.start.mock.invocationCallOrder[0]);
});

test('with single keys switched off the browser gets them, and the list switches them on again', () => {
  const { keys, bench, dialogs, press } = keyboard();
  keys.singleKeys = false;
  for (const code of ['Digit2', 'Space', 'KeyG', 'PageDown']) expect(press(code)).toEqual({ kept: false });
  press('', { key: 'z', ctrlKey: true });
  expect(bench.undo).toHaveBeenCalledTimes(1);
  press('', { key: '?' });
  expect(dialogs.keyList).toBe(true);
  keys.singleKeys = true;
  press('Digit2');
  expect(bench.hear).toHaveBeenCalledTimes(1);
});

test('Escape leaves the hall, but closes a dialog first', () => {
  const shut = keyboard({ hall: true });
  expect(shut.press('Escape', { key: 'Escape' })).toEqual({ kept: true });
  expect(shut.projection.leave).toHaveBeenCalledTimes(1);
  const open = keyboard({ hall: true, dialog: true });
  expect(open.press('Escape', { key: 'Escape' })).toEqual({ kept: false });
  expect(open.projection.leave).not.toHaveBeenCalled();
});
