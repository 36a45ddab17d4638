import { test, type Browser, type Page } from '@playwright/test';

type Call = (...args: never[]) => unknown;

/** The exported functions of one script of tests/browser/harness, each running in the page. */
export type Harness<Module> = {
  [Name in keyof Module]: Module[Name] extends Call
    ? (...args: Parameters<Module[Name]>) => Promise<Awaited<ReturnType<Module[Name]>>>
    : never;
};

/** Opens the harness page and hands out the functions of one of its scripts. */
export async function openHarness<Module extends object>(page: Page, file: string): Promise<Harness<Module>> {
  if (page.url() === 'about:blank') await page.goto('/');
  await page.waitForFunction(() => 'callHarness' in window);
  const call = (name: string, args: unknown[]) =>
    page.evaluate((asked) => window.callHarness(asked.file, asked.name, asked.args), { file, name, args });
  return new Proxy({} as Harness<Module>, {
    // A promise-like object would be awaited by mistake: it has no `then`.
    get: (_, name) => (name === 'then' ? undefined : (...args: unknown[]) => call(String(name), args))
  });
}

const kept = new WeakMap<Browser, Promise<Page>>();

/** One page of the harness for all tests of a worker, opened by the first: nothing of a room stays in it. */
export async function keptHarness<Module extends object>(
  browser: Browser,
  baseURL: string | undefined,
  file: string
): Promise<Harness<Module>> {
  let page = kept.get(browser);
  if (!page) kept.set(browser, (page = browser.newPage({ baseURL })));
  return openHarness<Module>(await page, file);
}

/** Inside of a `test.describe`: one page, opened once, for all of its tests; gives the functions of one of its scripts. */
export function sharedHarness<Module extends object>(file: string): () => Harness<Module> {
  let page: Page;
  let harness: Harness<Module>;
  test.beforeAll(async ({ browser, baseURL }) => {
    page = await browser.newPage({ baseURL });
    harness = await openHarness<Module>(page, file);
  });
  test.afterAll(() => page.close());
  return () => harness;
}
