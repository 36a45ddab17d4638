import { gzipSync } from 'node:zlib';
import type { Page } from '@playwright/test';

interface Begun {
  /** Epoch of the first sound, ms. */
  begun?: number;
}

/** Notes when what waited for the first sound is let go (screens/parts/seen-before.ts). Runs in the page before anything else. */
function noteTheBeginning(): void {
  const add = DOMTokenList.prototype.add;
  DOMTokenList.prototype.add = function (...names) {
    if (names.includes('seen')) (window as Begun).begun ??= Date.now();
    add.apply(this, names);
  };
}

/**
 * Weighs all that a page asks for until its first sound is there, and by what it is played; to be called before it opens.
 * @returns what gives the names of what was asked for, and its weight in kB: compressed as hosts do (gzip), typefaces as they are
 */
export async function weighFirstSound(page: Page): Promise<() => Promise<{ names: string[]; kB: number }>> {
  await page.addInitScript(noteTheBeginning);
  const parts: Promise<{ name: string; bytes: number; asked: number }>[] = [];
  page.on('response', (response) => {
    const name = new URL(response.url()).pathname;
    const asked = response.request().timing().startTime;
    const weigh = (body: Buffer) => (name.endsWith('.woff2') ? body.length : gzipSync(body).length);
    parts.push(response.body().then((body) => ({ name, bytes: weigh(body), asked })));
  });
  return async () => {
    const begun = await page.evaluate(() => (window as Begun).begun);
    if (begun === undefined) throw new Error('the first sound is not there yet');
    const before = (await Promise.all(parts)).filter(({ asked }) => asked <= begun);
    return {
      names: before.map(({ name }) => name),
      kB: before.reduce((sum, { bytes }) => sum + bytes, 0) / 1000
    };
  };
}
