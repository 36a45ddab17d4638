import { chromium } from '@playwright/test';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { createServer } from 'vite';

/**
 * @typedef {import('./time-waves.js').ShellAsked} ShellAsked
 * @typedef {import('./time-waves.js').WaveTimes & { first: number }} Times
 * @typedef {{ before: number, own: number, all: number }} Memory in MB: of its own before and at most, and all at most
 */

/** A page in a Chromium in which waves can be timed, each time in new workers. */
export class ChromiumTimes {
  /** @type {import('vite').ViteDevServer} */
  #server;
  /** @type {import('@playwright/test').Browser} */
  #browser;

  /**
   * @param {import('vite').ViteDevServer} server
   * @param {import('@playwright/test').Browser} browser
   */
  constructor(server, browser) {
    this.#server = server;
    this.#browser = browser;
  }

  /** @param {string} executablePath */
  static async start(executablePath) {
    const configFile = path.join(import.meta.dirname, 'harness/vite.config.ts');
    const server = await createServer({ configFile, logLevel: 'error', server: { host: '127.0.0.1' } });
    await server.listen();
    const args = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
    return new ChromiumTimes(server, await chromium.launch({ executablePath, args }));
  }

  async stop() {
    await this.#browser.close();
    await this.#server.close();
  }

  get version() {
    return this.#browser.version();
  }

  /**
   * @param {ShellAsked} asked
   * @param {number} runs
   * @returns {Promise<Times>}
   */
  times(asked, runs) {
    return this.#onPage((page) =>
      page.evaluate(({ asked, runs }) => /** @type {any} */ (window).speedHarness.times(asked, runs), {
        asked,
        runs
      })
    );
  }

  /**
   * Seconds for the mounts of the demo bench, one a run.
   * @param {number} workers
   * @param {number} runs
   * @returns {Promise<number[]>}
   */
  demo(workers, runs) {
    return this.#onPage((page) =>
      page.evaluate(({ workers, runs }) => /** @type {any} */ (window).speedHarness.demo(workers, runs), {
        workers,
        runs
      })
    );
  }

  /**
   * The memory of the tab's process with all its workers while the demo bench is solved again and again; null where the
   * system does not tell.
   * @param {number} workers
   * @param {number} runs
   * @returns {Promise<Memory | null>}
   */
  memory(workers, runs) {
    return this.#onPage(async (page) => {
      const tabs = (await this.#renderers()).flatMap((pid) => {
        const before = memoryOf(pid);
        return before ? [{ pid, before: before.own, ...before }] : [];
      });
      const watch = setInterval(() => {
        for (const tab of tabs) {
          const now = memoryOf(tab.pid);
          tab.own = Math.max(tab.own, now?.own ?? 0);
          tab.all = Math.max(tab.all, now?.all ?? 0);
        }
      }, 5);
      try {
        await page.evaluate(
          ({ workers, runs }) => /** @type {any} */ (window).speedHarness.demo(workers, runs),
          {
            workers,
            runs
          }
        );
      } finally {
        clearInterval(watch);
      }
      // The browser keeps a spare process for the next tab.
      return tabs.sort((a, b) => b.own - a.own)[0] ?? null;
    });
  }

  /** The processes of the browser that show pages. */
  async #renderers() {
    const session = await this.#browser.newBrowserCDPSession();
    const { processInfo } = await session.send('SystemInfo.getProcessInfo');
    await session.detach();
    return processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => id);
  }

  /**
   * @template T
   * @param {(page: import('@playwright/test').Page) => Promise<T>} use
   * @returns {Promise<T>}
   */
  async #onPage(use) {
    const page = await this.#browser.newPage();
    try {
      await page.goto(/** @type {string} */ (this.#server.resolvedUrls?.local[0]));
      await page.waitForFunction(() => 'speedHarness' in window);
      return await use(page);
    } finally {
      await page.close();
    }
  }
}

/**
 * Resident memory of a process in MB, its own and with what it shares with others. Only Linux tells.
 * @param {number} pid
 */
function memoryOf(pid) {
  const file = `/proc/${pid}/status`;
  if (!existsSync(file)) return null;
  const status = readFileSync(file, 'utf8');
  const megabytes = (/** @type {string} */ key) =>
    Number(new RegExp(`^${key}:\\s+(\\d+) kB`, 'm').exec(status)?.[1]) / 1024;
  return { own: megabytes('RssAnon'), all: megabytes('VmRSS') };
}
