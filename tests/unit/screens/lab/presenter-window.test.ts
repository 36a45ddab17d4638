import { expect, test, vi } from 'vitest';
import { PresenterWindow } from '../../../../src/lib/screens/lab/presenter-window.svelte.js';

/** A window that notes what is done to it. */
function besideAtHand() {
  const window = Object.assign(new EventTarget(), { focus: vi.fn(), close: vi.fn() });
  return window as unknown as Window & typeof window;
}

test('opens once, then comes to the front; its keys are handed on', () => {
  const beside = besideAtHand();
  const open = vi.fn(() => beside);
  const presenter = new PresenterWindow(open);
  presenter.onKey = vi.fn();
  presenter.open();
  presenter.open();
  expect([open.mock.calls.length, beside.focus.mock.calls.length, presenter.problem]).toEqual([1, 1, null]);
  beside.dispatchEvent(new Event('keydown'));
  expect(presenter.onKey).toHaveBeenCalledTimes(1);
});

test('is known to be gone when somebody closes it, and closes itself', () => {
  const beside = besideAtHand();
  const presenter = new PresenterWindow(() => beside);
  presenter.open();
  beside.dispatchEvent(new Event('pagehide'));
  expect(presenter.current).toBeNull();
  presenter.open();
  presenter.close();
  expect([beside.close.mock.calls.length, presenter.current]).toEqual([1, null]);
});

test('says so where the browser opens none, until it does', () => {
  let beside: Window | null = null;
  const presenter = new PresenterWindow(() => beside);
  presenter.open();
  expect([presenter.current, presenter.problem]).toEqual([null, expect.stringContaining('has not opened')]);
  beside = besideAtHand();
  presenter.open();
  expect([presenter.current, presenter.problem]).toEqual([beside, null]);
});
