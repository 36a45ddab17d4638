import { dev, version } from '$app/environment';
import { resolve } from '$app/paths';

/** Makes sure that the work of this window is kept; rejects if it cannot be. */
export type BeforeReload = () => Promise<void>;

const CHECK_EVERY_MS = 3_600_000;
/** How long the newer version may take to take over; a browser that holds on to the older one lets it go when the page is loaded anew. */
const TAKES_OVER_WITHIN_MS = 3000;
/** How long the page may still stand after it was to be loaded anew, before that is asked for once more; then twice as long. */
const STANDS_AT_MOST_MS = 10_000;
/** A store that has not answered by then is taken for one that keeps nothing. */
const KEPT_WITHIN_MS = 20_000;
/** The tab's own store says under this name how often the page has been loaded anew for the newer version. */
const ASKED = 'backwave was asked for its newer version';
/** So often at most: a browser that still shows the older one then shows it until it is asked again. */
const MOST_RELOADS = 3;
const NOT_KEPT =
  'The new version is not used yet, because your work could not be kept. Save it to a file, then try again.';

/**
 * Keeps the page for use without a network and says when a newer version is there. Nothing is ever reloaded
 * unasked. Where a browser has no service worker (a file, a plain address in the house, a private window) nothing
 * happens at all.
 */
export class Updates {
  /**
   * What there is to say: a newer version waits; or another window has put it in place, while this one still shows
   * the older one.
   */
  news: 'waiting' | 'in place' | null = $state(null);
  /** Everything is on this machine: the page will open without a network. */
  kept: boolean = $state(false);
  /** The user has asked for the new version. */
  busy: boolean = $state(false);
  /** Why the new version is not used yet, in one sentence. */
  problem: string | null = $state(null);

  #registration: ServiceWorkerRegistration | null = null;
  #beforeReload: BeforeReload | undefined;
  #lastCheck = 0;
  #takingOver: ReturnType<typeof setTimeout> | undefined;

  /** Starts, with what has to be done before the page may be loaded anew; call it once the page is shown. Returns what ends it. */
  connect(beforeReload?: BeforeReload): () => void {
    const ended = new AbortController();
    this.#beforeReload = beforeReload;
    // Some browsers throw at the very word where storage is forbidden.
    this.#register(ended.signal).catch(() => undefined);
    return () => {
      ended.abort();
      clearTimeout(this.#takingOver);
    };
  }

  /** Keeps the work, then loads the newer version. */
  async useNow(): Promise<void> {
    if (this.busy) return;
    this.busy = true;
    this.problem = null;
    const waiting = this.#registration?.waiting;
    // With nothing waiting it is in place already: a reload is all there is to do.
    if (!waiting) return this.#reload();
    try {
      await this.#keepWork();
      this.#letTakeOver(waiting);
    } catch {
      this.#notKept();
    }
  }

  #letTakeOver(waiting: ServiceWorker): void {
    waiting.postMessage('use now');
    this.#takingOver = setTimeout(() => void this.#reload(), TAKES_OVER_WITHIN_MS);
  }

  /** Where the page was loaded anew for the newer version and the browser has given out the older one once more, it is tried again. */
  async #goOn(active: ServiceWorker): Promise<void> {
    const reloads = reloadsAsked();
    if (reloads === 0) return;
    const waiting = this.#registration?.waiting ?? null;
    const isOld = waiting !== null || ((await versionOf(active)) ?? version) !== version;
    if (!isOld || reloads >= MOST_RELOADS) return noteReloads(0);
    this.busy = true;
    if (waiting) this.#letTakeOver(waiting);
    else await this.#reload();
  }

  async #register(signal: AbortSignal): Promise<void> {
    if (dev || !('serviceWorker' in navigator)) return;
    const container = navigator.serviceWorker;
    const script = `${location.origin}${resolve('/')}service-worker.js`;
    // A copy of the page in a folder above may have a service worker too; only a change of this page's own is news.
    let ours = container.controller?.scriptURL === script;
    const changed = () => {
      if (this.busy) void this.#reload();
      else if (ours) this.news = 'in place';
      ours = true;
    };
    container.addEventListener('controllerchange', changed, { signal });
    // The host's cache must never keep an old worker alive.
    const registration = await container.register(script, { updateViaCache: 'none' });
    if (signal.aborted) return;
    this.#registration = registration;
    this.#lastCheck = Date.now();
    ours ||= registration.active !== null;
    this.#watch(registration.installing);
    if (registration.waiting && registration.active) this.news ??= 'waiting';
    registration.addEventListener('updatefound', () => this.#watch(registration.installing), { signal });
    const look = () => this.#look();
    document.addEventListener('visibilitychange', look, { signal });
    addEventListener('online', look, { signal });

    const active = registration.active ?? (await activated(registration.installing ?? registration.waiting));
    this.kept = true;
    await this.#goOn(active);
    active.postMessage('page loaded');
  }

  /** Says so once a worker that was fetched beside an active one is complete. */
  #watch(incoming: ServiceWorker | null): void {
    incoming?.addEventListener('statechange', () => {
      if (incoming.state === 'installed' && this.#registration?.active) this.news ??= 'waiting';
    });
  }

  /** A page may stay open for days: asks for a newer version when one comes back to it. */
  #look(): void {
    if (document.visibilityState === 'hidden' || Date.now() - this.#lastCheck < CHECK_EVERY_MS) return;
    this.#lastCheck = Date.now();
    // Without a network there is nothing to find.
    this.#registration?.update().catch(() => undefined);
  }

  /** Keeps once more what was done meanwhile, and loads the page anew. */
  async #reload(): Promise<void> {
    clearTimeout(this.#takingOver);
    try {
      await this.#keepWork();
      noteReloads(reloadsAsked() + 1);
      this.#load(STANDS_AT_MOST_MS);
    } catch {
      this.#notKept();
    }
  }

  /** Loads the page anew; where it still stands after a while, the browser has dropped that, and is asked once more. */
  #load(patienceMs: number): void {
    clearTimeout(this.#takingOver);
    location.reload();
    this.#takingOver = setTimeout(() => this.#load(2 * patienceMs), patienceMs);
  }

  async #keepWork(): Promise<void> {
    let late: ReturnType<typeof setTimeout> | undefined;
    const tooLate = new Promise<never>((_, reject) => {
      late = setTimeout(() => reject(new Error('the store does not answer')), KEPT_WITHIN_MS);
    });
    try {
      await Promise.race([this.#beforeReload?.(), tooLate]);
    } finally {
      clearTimeout(late);
    }
  }

  #notKept(): void {
    this.busy = false;
    this.problem = NOT_KEPT;
  }
}

/** Whether this very page came from what is kept on this machine. */
export function isKept(): boolean {
  try {
    return Boolean(navigator.serviceWorker?.controller);
  } catch {
    return false;
  }
}

/** Which version a worker hands out; null where it does not say. */
function versionOf(worker: ServiceWorker): Promise<string | null> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    const told = (told: string | null) => {
      port1.close();
      resolve(told);
    };
    port1.onmessage = ({ data }) => told(String(data));
    setTimeout(() => told(null), TAKES_OVER_WITHIN_MS);
    worker.postMessage('which version', [port2]);
  });
}

function reloadsAsked(): number {
  try {
    return Number(sessionStorage.getItem(ASKED) ?? 0);
  } catch {
    return 0;
  }
}

function noteReloads(count: number): void {
  try {
    if (count === 0) sessionStorage.removeItem(ASKED);
    else sessionStorage.setItem(ASKED, String(count));
  } catch {
    // Then it is tried once.
  }
}

/** The worker once it is complete and at work; never, if it fails. */
function activated(worker: ServiceWorker | null): Promise<ServiceWorker> {
  return new Promise((resolve) => {
    if (worker?.state === 'activated') resolve(worker);
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'activated') resolve(worker);
    });
  });
}
