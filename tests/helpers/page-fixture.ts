import { test as base, expect } from '@playwright/test';
import { BenchPage } from './page-bench.js';

interface Fixtures {
  /** The page as one uses it. */
  bench: BenchPage;
}

/**
 * Every test of the page fails on an error or a warning in the console, on an error nobody caught, on a request
 * that fails and on a request to another place than the page came from: it needs no internet.
 */
export const test = base.extend<Fixtures>({
  page: async ({ page }, use) => {
    const complaints: string[] = [];
    let home: string | null = null;
    page.on('console', (message) => {
      if (['error', 'warning', 'assert'].includes(message.type()))
        complaints.push(`${message.type()}: ${message.text()} (${message.location().url})`);
    });
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
    expect(complaints, 'complaints of the browser').toEqual([]);
  },
  bench: async ({ page }, use) => {
    await use(new BenchPage(page));
  }
});

export { expect };
