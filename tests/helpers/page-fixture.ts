import { test as base, expect, type Page } from '@playwright/test';
import { BenchPage } from './page-bench.js';
import { isDrawn } from './page-frames.js';
import { leaveBench, OWN_BENCH, OWN_NAME } from './page-own-bench.js';

interface Fixtures {
  /** The page as one uses it. */
  bench: BenchPage;
}

interface Options {
  /**
   * Whether one has been here before: then a bench lies in the browser's store whose sound costs little
   * (page-own-bench.ts), and the page opens with it. Otherwise it opens with the demo bench and its engine.
   */
  returning: boolean;
  /** The bench that lies in the browser's store of one who comes back. */
  left: string;
  /** Whether the browser has service workers; without them nothing is kept for use without a network. */
  serviceWorker: boolean;
}

/**
 * Every test of the page fails on an error or a warning in the console, on an error nobody caught, on a request
 * that fails and on a request to another place than the page came from: it needs no internet.
 */
export const test = base.extend<Fixtures & Options>({
  returning: [true, { option: true }],
  left: [OWN_BENCH, { option: true }],
  serviceWorker: [false, { option: true }],
  context: async ({ context, returning, left, serviceWorker }, use) => {
    if (returning) await context.addInitScript(leaveBench, { text: left, name: OWN_NAME });
    if (!serviceWorker)
      await context.addInitScript(() => {
        delete (Navigator.prototype as { serviceWorker?: unknown }).serviceWorker;
      });
    await use(context);
  },
  page: async ({ page }, use, info) => {
    const complaints: string[] = [];
    let home: string | null = null;
    page.on('console', (message) => {
      if (['error', 'warning', 'assert'].includes(message.type()))
        complaints.push(`${message.type()}: ${message.text()} (${message.location().url})`);
    });
    // The tests choose the files all along: switched on only when a test waits for it, that may come after its key.
    page.on('filechooser', () => undefined);
    page.on('pageerror', (error) => complaints.push(`uncaught: ${error.message}`));
    page.on('request', (request) => {
      const { protocol, origin } = new URL(request.url());
      if (protocol === 'blob:' || protocol === 'data:') return;
      home ??= origin;
      if (origin !== home) complaints.push(`asked elsewhere: ${request.url()}`);
    });
    page.on('response', (response) => {
      if (response.status() >= 400) complaints.push(`${response.status()} for ${response.url()}`);
    });
    await use(page);
    // What failed for want of a frame says so: there is nothing else to see of it.
    if (info.status !== info.expectedStatus && !(await isDrawn(page)))
      console.log(`The browser has stopped drawing the page of "${info.title}".`);
    expect(complaints, 'complaints of the browser').toEqual([]);
  },
  bench: async ({ page, returning, left }, use) => {
    await use(new BenchPage(page, returning, left));
  }
});

type Act = (all: { page: Page; bench: BenchPage }) => Promise<void>;

/**
 * Several cases on one opening of the page, for what the page says and does, not for how it opens: `it` lists them, and
 * `onOnePage` is the body of the test that runs them, each a step of its own name that begins with the bench as it came.
 */
export function cases(): { it: (title: string, act: Act) => void; onOnePage: Act } {
  const listed: { title: string; act: Act }[] = [];
  return {
    it: (title, act) => void listed.push({ title, act }),
    onOnePage: async ({ page, bench }) => {
      test.setTimeout(60_000 + 30_000 * listed.length);
      await bench.open();
      for (const [i, { title, act }] of listed.entries())
        await test.step(title, async () => {
          // The demo bench opens with the wave solution, and a fresh one with the rule of thumb.
          if (i > 0 || !bench.returning) await bench.afresh();
          await act({ page, bench });
        });
    }
  };
}

export { expect };
