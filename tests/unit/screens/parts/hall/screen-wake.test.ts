import { describe, expect, it } from 'vitest';
import { ScreenWake, type ScreenLocks } from '../../../../../src/lib/screens/parts/hall/screen-wake.js';

class Page extends EventTarget {
  visibilityState: DocumentVisibilityState = 'visible';
  turn(state: DocumentVisibilityState): void {
    this.visibilityState = state;
    this.dispatchEvent(new Event('visibilitychange'));
  }
}

/** Locks that are granted when the test says so, or refused. */
function locks({ refuse = false, wait = Promise.resolve() } = {}) {
  const given: { released: boolean; release(): Promise<void> }[] = [];
  const request = async () => {
    await wait;
    if (refuse) throw new DOMException('no', 'NotAllowedError');
    const lock = { released: false, release: async () => void (lock.released = true) };
    given.push(lock);
    return lock;
  };
  return { given, locks: { request } as unknown as ScreenLocks };
}

const settled = (): Promise<void> => new Promise((done) => setTimeout(done));

describe('ScreenWake', () => {
  it('holds one lock while it is wanted and lets it go', async () => {
    const { given, locks: all } = locks();
    const wake = new ScreenWake(new Page(), all);
    expect(wake.held).toBe(false);
    await wake.keep();
    await wake.keep();
    expect(given.length).toBe(1);
    expect(wake.held).toBe(true);
    await wake.release();
    expect(wake.held).toBe(false);
    expect(given[0].released).toBe(true);
  });

  it('asks again when the page comes back, and not while it is hidden or after it was let go', async () => {
    const page = new Page();
    const { given, locks: all } = locks();
    const wake = new ScreenWake(page, all);
    await wake.keep();
    given[0].released = true;
    page.turn('hidden');
    await settled();
    expect(given.length).toBe(1);
    expect(wake.held).toBe(false);
    page.turn('visible');
    await settled();
    expect(given.length).toBe(2);
    expect(wake.held).toBe(true);
    await wake.release();
    page.turn('visible');
    await settled();
    expect(given.length).toBe(2);
  });

  it('gives back a lock that comes after it is no longer wanted', async () => {
    let grant = (): void => undefined;
    const { given, locks: all } = locks({ wait: new Promise((done) => (grant = done)) });
    const wake = new ScreenWake(new Page(), all);
    const kept = wake.keep();
    await wake.release();
    grant();
    await kept;
    expect(given.length).toBe(1);
    expect(given[0].released).toBe(true);
    expect(wake.held).toBe(false);
  });

  it('holds nothing and throws nothing where it is refused or there is none', async () => {
    for (const all of [locks({ refuse: true }).locks, undefined]) {
      const wake = new ScreenWake(new Page(), all);
      await wake.keep();
      expect(wake.held).toBe(false);
      await wake.release();
    }
  });
});
