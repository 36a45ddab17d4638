import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { BenchPage } from '../helpers/page-bench.js';
import { Deployment } from '../helpers/page-deployment.js';
import { expect, test as base } from '../helpers/page-fixture.js';

const test = base.extend<{ deployed: Deployment }>({
  // A host of its own for each test: caches belong to an address and a port.
  deployed: async ({ page }, use) => {
    const deployed = await Deployment.in('/', '/some/folder/');
    await use(deployed);
    await page.context().close();
    await deployed.close();
  }
});

test.use({ serviceWorker: true });

const KEPT = 'works without a network';

/** The first visit, until everything is on this machine. */
async function firstVisit(bench: BenchPage, address: string): Promise<void> {
  await bench.open(address);
  await expect(bench.page.getByText(KEPT)).toBeVisible();
}

/** What all of it must do without a network: lay out, compute, play, switch. */
async function worksWhole(bench: BenchPage): Promise<void> {
  await bench.play();
  await bench.hear(2);
  await expect(bench.spoken).toHaveText(/Flat plate, heard, \d+ dB louder/);
  await bench.type('width', '60');
  await expect(bench.stage.locator('.way')).toHaveText('nearest way round: 60 mm');
  await expect(bench.page.getByRole('alert')).toHaveCount(0);
  expect(
    await bench.page.evaluate(() =>
      [...document.fonts].some(({ family, status }) => status === 'loaded' && family.includes('Source'))
    )
  ).toBe(true);
}

/** The window shows this release; null: the one built from the sources. */
async function shows(page: Page, release: string | null): Promise<void> {
  const said = page.locator('meta[name="released"]');
  if (release === null) return expect(said).toHaveCount(0);
  try {
    // Where the browser gives the older one out once more, it is loaded up to three times.
    await expect(said).toHaveAttribute('content', release, { timeout: 45_000 });
  } catch (error) {
    console.log(`Release ${release} does not come: ${JSON.stringify(await standing(page).catch(String))}`);
    throw error;
  }
}

/** How page and workers stand, for whoever looks for why a release does not come. */
const standing = (page: Page): Promise<unknown> =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    const states = (['installing', 'waiting', 'active'] as const).map((one) => registration?.[one]?.state);
    return {
      states,
      asked: { ...sessionStorage },
      sinceLoadMs: performance.now(),
      said: document.body.innerText.slice(0, 300)
    };
  });

const cacheNames = (page: Page): Promise<string[]> => page.evaluate(() => caches.keys());

/** Leaves a mark in the window that any reload wipes away. */
async function mark(page: Page): Promise<void> {
  await page.evaluate(() => document.body.setAttribute('data-not-reloaded', ''));
}

const marked = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.querySelector('body[data-not-reloaded]') !== null);

/** Asks the host for a newer version, as coming back to the window after an hour does. */
async function look(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await (await navigator.serviceWorker.getRegistration())!.update();
  });
}

/** The state of the newer version that waits, if there is one. */
const waiting = (page: Page): Promise<string | undefined> =>
  page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.waiting?.state);

const news = (page: Page) => page.getByText('A new version is here.');

test('what was visited once works without a network, each copy from its own folder', async ({
  page,
  bench,
  context,
  deployed
}) => {
  test.setTimeout(180_000);
  const folders = ['/', '/some/folder/'];
  await test.step('the first visit keeps every file, says so and goes on when the network is cut; the second starts without one', async () => {
    await firstVisit(bench, deployed.address());
    const names = await cacheNames(page);
    expect(names).toHaveLength(1);
    const keptFiles = await page.evaluate(async (name) => {
      const requests = await (await caches.open(name)).keys();
      return requests.map(({ url }) => new URL(url).pathname.slice(1) || 'index.html').sort();
    }, names[0]);
    expect(keptFiles).toEqual(deployed.parts('/').filter((name) => !name.startsWith('some/')));
    expect(keptFiles.length).toBeGreaterThan(20);

    await context.setOffline(true);
    await worksWhole(bench);
    await bench.open(deployed.address());
    await worksWhole(bench);
    await context.setOffline(false);
  });

  await test.step('once everything is kept, the host may be gone, whatever folder the page stood in', async () => {
    await firstVisit(bench, deployed.address(folders[1]));
    await deployed.stop();
    for (const folder of folders) {
      await expect(fetch(deployed.address(folder))).rejects.toThrow();
      // Each way to name the page once: the root by its file, the folder by a link with something behind it.
      await bench.open(deployed.address(folder) + (folder === '/' ? 'index.html' : ''));
      await expect(page.getByText(KEPT)).toBeVisible();
      await worksWhole(bench);
      await bench.open(deployed.address(folder) + '?from=a-link#projector-of-nothing');
      await expect(page.getByText(KEPT)).toBeVisible();
    }
  });

  await test.step('copies in two folders of one host keep apart', async () => {
    await deployed.start();
    deployed.release('two', '/some/folder/');
    await look(page);
    await page.getByRole('button', { name: 'Use it now' }).click();
    await shows(page, 'two');
    // The copy at the root, below which the other one stands, keeps its own version and its cache.
    await expect.poll(async () => (await cacheNames(page)).length).toBe(2);
    await deployed.stop();
    await bench.open(deployed.address('/'));
    await shows(page, null);
    await bench.open(deployed.address('/some/folder/'));
    await shows(page, 'two');
  });

  await test.step('the hall’s script, with the window for the presenter, comes from what is kept as well', async () => {
    await page.keyboard.press('h');
    await page.getByRole('button', { name: 'take the demo’s script' }).click();
    const opening = context.waitForEvent('page');
    await page.keyboard.press('Escape');
    await page.keyboard.press('n');
    const beside = await opening;
    await expect(beside.locator('main')).toHaveCSS('display', 'grid');
    await page.bringToFront();
    await page.keyboard.press('r');
    await page.keyboard.press('PageDown');
    await expect(beside.getByRole('heading', { level: 1 })).toHaveText('The bare speaker');
    await expect(page.getByRole('main', { name: 'Projector view' })).toContainText('Free air');
    await page.keyboard.press('Escape');
  });
});

test('a new version waits until it is asked for, is put off by "later", then it is there, and the old one is gone', async ({
  page,
  bench,
  deployed
}) => {
  // Six times the page is loaded, each time with a worker to start.
  test.setTimeout(180_000);
  await firstVisit(bench, deployed.address());
  await test.step('a page of another version than its service worker, in the middle of an upload, is not kept', async () => {
    const worker = deployed.file('service-worker.js');
    const old = readFileSync(worker, 'utf8');
    deployed.release('half-way');
    const its = readFileSync(worker, 'utf8');
    // The newer page is uploaded already, a third worker still names the older scripts.
    writeFileSync(worker, old.replaceAll(/`[0-9a-f]{12}`/g, '`three`'));
    await page.evaluate(async () => {
      const registration = (await navigator.serviceWorker.getRegistration())!;
      const failed = new Promise<void>((resolve) =>
        registration.addEventListener('updatefound', () => {
          const incoming = registration.installing!;
          incoming.addEventListener('statechange', () => incoming.state === 'redundant' && resolve());
        })
      );
      await registration.update().catch(() => undefined);
      await failed;
    });
    await expect(news(page)).toHaveCount(0);
    await deployed.stop();
    await bench.open(deployed.address());
    await shows(page, null);
    await worksWhole(bench);
    writeFileSync(worker, its);
  });

  await mark(page);
  const before = await cacheNames(page);
  deployed.release('two');
  await deployed.start();
  await look(page);
  await expect(news(page)).toBeVisible();
  await expect.poll(() => waiting(page)).toBe('installed');
  await page.getByRole('button', { name: 'later' }).click();
  await expect(news(page)).toHaveCount(0);
  await bench.drawn();
  expect(await marked(page)).toBe(true);
  expect(await waiting(page)).toBe('installed');
  await expect(bench.field('width')).toHaveValue('60');
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
  // Whoever loads the page anew meanwhile gets the version they had.
  await page.reload();
  await bench.open(deployed.address());
  await shows(page, null);
  await expect(news(page)).toBeVisible();
  await mark(page);

  // The last change is made in the moment before.
  await bench.type('width', '75');
  await page.getByRole('button', { name: 'Use it now' }).click();
  await shows(page, 'two');
  expect(await marked(page)).toBe(false);
  await expect(bench.field('width')).toHaveValue('75');
  await expect(news(page)).toHaveCount(0);
  await expect.poll(() => cacheNames(page)).not.toContain(before[0]);
  expect(await cacheNames(page)).toHaveLength(1);
  await deployed.stop();
  await bench.open(deployed.address());
  await shows(page, 'two');
  await worksWhole(bench);
});

test('a second window is told, goes on with the older version, and loses nothing', async ({
  page,
  bench,
  context,
  deployed
}) => {
  await firstVisit(bench, deployed.address());
  const other = new BenchPage(await context.newPage());
  await other.open(deployed.address());
  await other.hear(2);
  await other.type('width', '60');
  await mark(other.page);
  const worker = deployed.parts('/').find((name) => /^_app\/immutable\/workers\//.test(name))!;
  deployed.release('two');
  await look(page);
  for (const window of [page, other.page]) await expect(news(window)).toBeVisible();

  await page.bringToFront();
  await page.getByRole('button', { name: 'Use it now' }).click();
  await shows(page, 'two');
  await bench.open(deployed.address());
  await expect(
    other.page.getByText('Another window uses a new version; this one still shows the older one.')
  ).toBeVisible();
  expect(await marked(other.page)).toBe(true);
  await expect(other.field('width')).toHaveValue('60');
  // Its own files are gone from the host, and still at hand for it.
  expect((await fetch(deployed.address() + worker)).status).toBe(404);
  expect(await other.page.evaluate(async (file) => (await fetch(file)).status, worker)).toBe(200);
  expect(await cacheNames(page)).toHaveLength(2);

  await other.page.getByRole('button', { name: 'Use it here too' }).click();
  await shows(other.page, 'two');
  await expect(other.field('width')).toHaveValue('60');
  await other.page.close();
  await bench.open(deployed.address());
  await expect.poll(() => cacheNames(page)).toHaveLength(1);
});

test('a host that lacks a file: nothing is kept until it is whole', async ({ page, bench, deployed }) => {
  test.setTimeout(120_000);
  const font = deployed.file(deployed.parts('/').find((name) => name.includes('cyrillic'))!);
  const bytes = readFileSync(font);
  rmSync(font);
  for (const answer of ['an error', 'the page'])
    await test.step(`it answers with ${answer}`, async () => {
      deployed.missingIsPage = answer === 'the page';
      await bench.open(deployed.address());
      await expect
        .poll(() =>
          page.evaluate(async () => {
            const registration = await navigator.serviceWorker.getRegistration();
            return registration === undefined || (!registration.active && !registration.installing);
          })
        )
        .toBe(true);
      await expect(page.getByText(KEPT)).toHaveCount(0);
      await worksWhole(bench);
    });
  writeFileSync(font, bytes);
  await firstVisit(bench, deployed.address());
});

// Where there is none at all: every other page of the tests (page-fixture.ts), and page-subfolder looks at this line.
test('without a service worker the page is as before: it is refused, or the very word is', async ({
  page,
  bench,
  deployed
}) => {
  const without = async (): Promise<void> => {
    await bench.open(deployed.address());
    await worksWhole(bench);
    await expect(page.getByText(KEPT)).toHaveCount(0);
  };
  await page.addInitScript(() => {
    ServiceWorkerContainer.prototype.register = () =>
      Promise.reject(new DOMException('The operation is insecure.', 'SecurityError'));
  });
  await without();
  await page.addInitScript(() =>
    Object.defineProperty(Navigator.prototype, 'serviceWorker', {
      get: () => {
        throw new DOMException('Access is denied.', 'SecurityError');
      }
    })
  );
  await without();
});

test('worker and manifest are served as what they are, and asked for anew each time', async ({
  deployed
}) => {
  for (const [name, type] of [
    ['service-worker.js', 'text/javascript; charset=utf-8'],
    ['manifest.webmanifest', 'application/manifest+json']
  ]) {
    const { headers } = await fetch(deployed.address() + name);
    expect([headers.get('content-type'), headers.get('cache-control')]).toEqual([type, 'no-cache']);
  }
});
