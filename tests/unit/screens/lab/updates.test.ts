import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';

const site = vi.hoisted(() => ({ dev: false }));
vi.mock('$app/environment', () => ({
  get dev() {
    return site.dev;
  },
  version: 'this one'
}));
vi.mock('$app/paths', () => ({ resolve: () => '/folder/' }));

const { Updates } = await import('../../../../src/lib/screens/lab/updates.svelte.js');

/** A worker of the browser, as far as the page sees it. */
class FakeWorker extends EventTarget {
  readonly scriptURL = 'https://host/folder/service-worker.js';
  readonly told: unknown[] = [];
  version: string | null = 'this one';
  constructor(public state: ServiceWorkerState) {
    super();
  }
  postMessage(message: unknown, ports: MessagePort[] = []): void {
    if (message !== 'which version') this.told.push(message);
    else if (this.version !== null) ports[0].postMessage(this.version);
  }
  become(state: ServiceWorkerState): void {
    this.state = state;
    this.dispatchEvent(new Event('statechange'));
  }
}

class FakeRegistration extends EventTarget {
  installing: FakeWorker | null = null;
  waiting: FakeWorker | null = null;
  active: FakeWorker | null = null;
  readonly update = vi.fn(() => Promise.resolve());
}

class FakeContainer extends EventTarget {
  controller: FakeWorker | null = null;
  readonly registration = new FakeRegistration();
  readonly register = vi.fn<ServiceWorkerContainer['register']>(() =>
    Promise.resolve(this.registration as unknown as ServiceWorkerRegistration)
  );
  /** The waiting worker takes over, as after `skipWaiting`. */
  takeOver(): void {
    const { registration } = this;
    [registration.active, registration.waiting] = [registration.waiting, null];
    this.controller = registration.active;
    this.dispatchEvent(new Event('controllerchange'));
  }
}

let container: FakeContainer;
let shown: EventTarget & { visibilityState: string };
const reload = vi.fn();
/** What the tab remembers of what was asked. */
const asked = new Map<string, string>();
const ASKED = 'backwave was asked for its newer version';

beforeEach(() => {
  container = new FakeContainer();
  shown = Object.assign(new EventTarget(), { visibilityState: 'visible' });
  vi.stubGlobal('navigator', { serviceWorker: container });
  vi.stubGlobal('document', shown);
  vi.stubGlobal('location', { origin: 'https://host', reload });
  vi.stubGlobal('addEventListener', () => undefined);
  asked.clear();
  vi.stubGlobal('sessionStorage', {
    getItem: (key: string) => asked.get(key) ?? null,
    setItem: (key: string, value: string) => void asked.set(key, value),
    removeItem: (key: string) => void asked.delete(key)
  });
});

/** What ends the pages of a test. */
const ends: (() => void)[] = [];

afterEach(() => {
  for (const end of ends.splice(0)) end();
  vi.unstubAllGlobals();
  vi.useRealTimers();
  reload.mockReset();
  site.dev = false;
});

/** Lets everything that is ready to go on, go on. */
const settle = () => new Promise((resolve) => setTimeout(resolve));

/** A later visit: the page is shown by a worker of this version, `waiting` says whether a newer one is complete. */
async function laterVisit(waiting: boolean, keep?: () => Promise<void>) {
  container.registration.active = container.controller = new FakeWorker('activated');
  if (waiting) container.registration.waiting = new FakeWorker('installed');
  const updates = new Updates();
  ends.push(updates.connect(keep));
  await settle();
  return { updates, waiting: container.registration.waiting };
}

/** A promise that is kept or broken from outside. */
function deferred() {
  let keep = (): void => undefined;
  let refuse = (): void => undefined;
  const promise = new Promise<void>((resolve, reject) => {
    keep = resolve;
    refuse = () => reject(new Error('the store is full'));
  });
  return { promise, keep, refuse };
}

describe('a first visit', () => {
  test('says that all is kept only once the worker is at work, and tells no news', async () => {
    const first = (container.registration.installing = new FakeWorker('installing'));
    const updates = new Updates();
    ends.push(updates.connect());
    await settle();
    first.become('installed');
    await settle();
    expect(updates.kept).toBe(false);
    Object.assign(container.registration, { installing: null, active: first });
    container.controller = first;
    container.dispatchEvent(new Event('controllerchange'));
    first.become('activated');
    await settle();
    expect([updates.kept, updates.news]).toEqual([true, null]);
    expect(first.told).toEqual(['page loaded']);
    expect(reload).not.toHaveBeenCalled();
  });

  test('whose worker fails says nothing', async () => {
    const first = (container.registration.installing = new FakeWorker('installing'));
    const updates = new Updates();
    ends.push(updates.connect());
    await settle();
    first.become('redundant');
    await settle();
    expect([updates.kept, updates.news]).toEqual([false, null]);
  });

  test('asks the host itself for the worker, in the folder of the page', async () => {
    await laterVisit(false);
    expect(container.register.mock.calls).toEqual([
      ['https://host/folder/service-worker.js', { updateViaCache: 'none' }]
    ]);
  });

  test('while developing there is no worker', async () => {
    site.dev = true;
    await laterVisit(false);
    expect(container.register).not.toHaveBeenCalled();
  });
});

describe('a newer version', () => {
  test('that waits already is told', async () => {
    expect((await laterVisit(true)).updates.news).toBe('waiting');
    expect(reload).not.toHaveBeenCalled();
  });

  test('that comes later is told once it is complete', async () => {
    const { updates } = await laterVisit(false);
    const incoming = (container.registration.installing = new FakeWorker('installing'));
    container.registration.dispatchEvent(new Event('updatefound'));
    expect(updates.news).toBeNull();
    incoming.become('installed');
    expect(updates.news).toBe('waiting');
  });

  test('is used only after the work is kept, and kept once more before the page goes', async () => {
    const kept = [deferred(), deferred()];
    const keep = vi.fn(() => kept[keep.mock.calls.length - 1].promise);
    const { updates, waiting } = await laterVisit(true, keep);
    void updates.useNow();
    await settle();
    expect(waiting!.told).toEqual([]);
    kept[0].keep();
    await settle();
    expect(waiting!.told).toEqual(['use now']);
    container.takeOver();
    await settle();
    expect(reload).not.toHaveBeenCalled();
    kept[1].keep();
    await settle();
    expect(keep).toHaveBeenCalledTimes(2);
    expect(reload).toHaveBeenCalledOnce();
  });

  test('is not used where the work cannot be kept, and can be asked for again', async () => {
    const [full, later] = [deferred(), deferred()];
    const keeps = [full, later];
    const { updates, waiting } = await laterVisit(true, () => keeps.shift()!.promise);
    void updates.useNow();
    full.refuse();
    await settle();
    expect(updates.problem).toMatch(
      /^The new version is not used yet, because your work could not be kept\./
    );
    expect([waiting!.told, updates.busy]).toEqual([[], false]);
    void updates.useNow();
    later.keep();
    await settle();
    expect([waiting!.told, updates.problem]).toEqual([['use now'], null]);
  });

  test('in place, but what was done meanwhile cannot be kept: the page stays', async () => {
    let full = false;
    const keep = () => (full ? Promise.reject(new Error('full')) : Promise.resolve());
    const { updates } = await laterVisit(true, keep);
    void updates.useNow();
    await settle();
    full = true;
    container.takeOver();
    await settle();
    expect(reload).not.toHaveBeenCalled();
    expect([updates.problem !== null, updates.busy]).toEqual([true, false]);
    full = false;
    await updates.useNow();
    expect(reload).toHaveBeenCalledOnce();
  });

  test('on which the browser does not act within three seconds is loaded all the same, once', async () => {
    const { updates, waiting } = await laterVisit(true);
    vi.useFakeTimers();
    void updates.useNow();
    await vi.advanceTimersByTimeAsync(2900);
    expect([waiting!.told, reload.mock.calls.length, updates.busy]).toEqual([['use now'], 0, true]);
    await vi.advanceTimersByTimeAsync(200);
    expect(reload).toHaveBeenCalledOnce();
  });

  test('that takes over in time is not loaded a second time', async () => {
    const { updates } = await laterVisit(true);
    vi.useFakeTimers();
    void updates.useNow();
    await vi.advanceTimersByTimeAsync(100);
    container.takeOver();
    await vi.advanceTimersByTimeAsync(9000);
    expect(reload).toHaveBeenCalledOnce();
  });

  test('is asked for once more where the page still stands after ten seconds, and then after twenty', async () => {
    const { updates } = await laterVisit(true);
    vi.useFakeTimers();
    void updates.useNow();
    await vi.advanceTimersByTimeAsync(100);
    container.takeOver();
    for (const [after, times] of [
      [9900, 1],
      [200, 2],
      [19_700, 2],
      [300, 3]
    ]) {
      await vi.advanceTimersByTimeAsync(after);
      expect(reload).toHaveBeenCalledTimes(times);
    }
    // It is one try of the three for all that.
    expect(asked.get(ASKED)).toBe('1');
  });

  test('is not used where the store does not answer for twenty seconds', async () => {
    const { updates, waiting } = await laterVisit(true, () => new Promise(() => undefined));
    vi.useFakeTimers();
    void updates.useNow();
    await vi.advanceTimersByTimeAsync(19_900);
    expect([updates.busy, updates.problem]).toEqual([true, null]);
    await vi.advanceTimersByTimeAsync(200);
    expect(updates.problem).toMatch(/could not be kept/);
    expect([waiting!.told, updates.busy, reload.mock.calls.length]).toEqual([[], false, 0]);
  });

  test('asked for twice is asked for once', async () => {
    const { updates, waiting } = await laterVisit(true);
    void updates.useNow();
    void updates.useNow();
    await settle();
    expect(waiting!.told).toEqual(['use now']);
  });

  test('put in place by another window is told here, and loaded only when asked', async () => {
    const keep = vi.fn(() => Promise.resolve());
    const { updates } = await laterVisit(true, keep);
    container.takeOver();
    await settle();
    expect(updates.news).toBe('in place');
    expect(reload).not.toHaveBeenCalled();
    await updates.useNow();
    expect(keep).toHaveBeenCalledOnce();
    expect(reload).toHaveBeenCalledOnce();
  });
});

test('one who comes back to the page after more than an hour has the host asked', async () => {
  vi.useFakeTimers({ toFake: ['Date'] });
  await laterVisit(false);
  const { update } = container.registration;
  shown.dispatchEvent(new Event('visibilitychange'));
  expect(update).not.toHaveBeenCalled();
  vi.setSystemTime(Date.now() + 3_600_001);
  Object.assign(shown, { visibilityState: 'hidden' });
  shown.dispatchEvent(new Event('visibilitychange'));
  expect(update).not.toHaveBeenCalled();
  Object.assign(shown, { visibilityState: 'visible' });
  shown.dispatchEvent(new Event('visibilitychange'));
  shown.dispatchEvent(new Event('visibilitychange'));
  expect(update).toHaveBeenCalledOnce();
});

describe('a page loaded anew for a newer version', () => {
  /** A visit of a page of this version behind so many reloads, shown by a worker of another version or of its own. */
  async function visitAfter(
    reloads: number,
    { waiting = false, version = 'this one' as string | null } = {}
  ) {
    asked.set(ASKED, String(reloads));
    container.registration.active = container.controller = new FakeWorker('activated');
    container.registration.active.version = version;
    if (waiting) container.registration.waiting = new FakeWorker('installed');
    const [updates, keep] = [new Updates(), vi.fn(() => Promise.resolve())];
    ends.push(updates.connect(keep));
    await settle();
    await vi.waitFor(() => expect(updates.busy || container.registration.active!.told.length > 0).toBe(true));
    return { updates, keep, waiting: container.registration.waiting };
  }

  test('that is shown has nothing more to do', async () => {
    const { updates } = await visitAfter(1);
    expect([updates.busy, updates.news, asked.has(ASKED)]).toEqual([false, null, false]);
    expect(reload).not.toHaveBeenCalled();
  });

  test('that waits still, since the older one was given out once more, lets it take over', async () => {
    const { updates, keep, waiting } = await visitAfter(1, { waiting: true });
    expect(updates.busy).toBe(true);
    expect(waiting!.told).toEqual(['use now']);
    container.takeOver();
    await vi.waitFor(() => expect(reload).toHaveBeenCalledOnce());
    expect(keep).toHaveBeenCalledOnce();
    expect(asked.get(ASKED)).toBe('2');
  });

  test('that took over while the older page was given out is loaded once more', async () => {
    const { keep } = await visitAfter(1, { version: 'a newer one' });
    await vi.waitFor(() => expect(reload).toHaveBeenCalledOnce());
    expect(keep).toHaveBeenCalledOnce();
    expect(asked.get(ASKED)).toBe('2');
  });

  test('in vain three times is given up, and told as before', async () => {
    const { updates, waiting } = await visitAfter(3, { waiting: true });
    expect([updates.busy, updates.news, asked.has(ASKED)]).toEqual([false, 'waiting', false]);
    expect([waiting!.told, reload.mock.calls]).toEqual([[], []]);
  });

  test('whose worker does not say what it is is left as it is', async () => {
    vi.useFakeTimers();
    asked.set(ASKED, '1');
    container.registration.active = container.controller = new FakeWorker('activated');
    container.registration.active.version = null;
    const updates = new Updates();
    ends.push(updates.connect());
    await vi.advanceTimersByTimeAsync(5000);
    expect([updates.busy, asked.has(ASKED)]).toEqual([false, false]);
    expect(reload).not.toHaveBeenCalled();
  });

  test('in a browser that remembers nothing is loaded anew all the same', async () => {
    vi.stubGlobal('sessionStorage', undefined);
    const { updates } = await laterVisit(true);
    await updates.useNow();
    container.takeOver();
    await vi.waitFor(() => expect(reload).toHaveBeenCalledOnce());
  });
});
