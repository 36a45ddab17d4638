import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { BENCH_VERSION } from '../../src/lib/file/versions/versions.js';
import { axeFinds } from '../helpers/page-axe.js';
import { demoBenchPath, demoBenchText } from '../helpers/demo-bench-text.js';
import type { BenchPage } from '../helpers/page-bench.js';
import { expect, test } from '../helpers/page-fixture.js';
import { dropFile } from '../helpers/page-give-file.js';

const line = (page: Page) => page.locator('[data-kept]');
const kept = (page: Page) => expect(line(page)).toHaveAttribute('data-kept', 'kept');
const heading = (bench: BenchPage) => bench.stage.getByRole('heading', { level: 2 });
const menuOf = (page: Page) => page.getByRole('dialog', { name: 'This bench and others' });

async function openMenu(page: Page) {
  // It may still be about to close after what was done last.
  await expect(menuOf(page)).toBeHidden();
  await line(page).getByRole('button').click();
  await expect(menuOf(page)).toBeVisible();
  return menuOf(page);
}

/** Makes the flat plate this wide: a change worth keeping. */
async function widen(bench: BenchPage, width: number) {
  await bench.hear(2);
  await bench.type('width', String(width));
}

/** Browsers that let a page write to files ask outside the page; without that they download. */
function withoutFilePickers(page: Page) {
  return page.evaluate(() => {
    for (const picker of ['showOpenFilePicker', 'showSaveFilePicker']) Reflect.deleteProperty(window, picker);
  });
}

/** A browser that lets a page write to the file one picks; the second time, the picker is closed. */
function withFilePicker(page: Page) {
  return page.evaluate(() => {
    const saved: string[] = [];
    const handle = {
      name: 'yard.backwave.json',
      createWritable: async () => ({
        write: async (text: string) => saved.push(text),
        close: async () => undefined
      })
    };
    let asked = 0;
    Object.assign(window, {
      saved,
      asked: () => asked,
      showSaveFilePicker: async () => {
        asked++;
        if (asked === 2) throw new DOMException('closed', 'AbortError');
        return handle;
      }
    });
  });
}

async function openFromMenu(page: Page, files: Parameters<BenchPage['picker']['setInputFiles']>[0]) {
  const menu = await openMenu(page);
  const asked = page.waitForEvent('filechooser');
  await menu.getByRole('button', { name: 'open a file' }).click();
  await (await asked).setFiles(files as string);
}

test.describe('without a bench of one’s own', () => {
  test.use({ returning: false });

  test('a new user starts at the demo bench; listening alone makes no bench, the first change does', async ({
    page,
    bench
  }) => {
    await bench.open();
    await expect(line(page)).toContainText('The demo bench');
    await expect(line(page)).toHaveAttribute('data-kept', 'demo');
    await expect(bench.stage.getByRole('radio', { name: 'wave solution' })).toBeChecked();
    await expect(bench.stage).toContainText(
      'this sound, wave solution, in front of the cone, far away, same drive',
      {
        timeout: 60_000
      }
    );
    await bench.hear(3);
    await bench.drawn();
    await expect(line(page)).toHaveAttribute('data-kept', 'demo');
    // What would have been kept of that is written before what is kept now, and has the first name.
    await widen(bench, 64);
    await kept(page);
    await expect(line(page)).toContainText(/My bench(?! \d)/);
    await expect((await openMenu(page)).getByRole('listitem')).toHaveCount(1);
  });

  test('a browser that keeps nothing says so, and the page works', async ({ page, bench }) => {
    await page.addInitScript(() => Object.defineProperty(window, 'indexedDB', { value: undefined }));
    await bench.open();
    await expect(page.getByRole('alert')).toContainText('lets nothing be kept');
    await widen(bench, 70);
    await expect(bench.field('width')).toHaveValue('70');
  });
});

test('what is changed is kept: a reload brings it back, and nothing else is seen', async ({
  page,
  bench
}) => {
  await bench.open();
  await test.step('a change is kept and survives a reload, with what was heard', async () => {
    await widen(bench, 77);
    await kept(page);
    await expect(line(page)).toContainText('My bench');
    await page.reload();
    await expect(heading(bench)).toHaveText('Flat plate');
    await expect(bench.field('width')).toHaveValue('77');
    await expect(line(page)).toContainText('My bench');
    // Where one begins is no step back.
    const menu = await openMenu(page);
    await expect(menu.getByRole('button', { name: 'undo' })).toBeDisabled();
    await page.keyboard.press('Escape');
  });
  await test.step('a change made in the very moment before a reload is kept, too', async () => {
    for (const width of [81, 82, 83]) {
      await bench.hear(2);
      await bench.type('width', String(width));
      await page.reload();
      await expect(bench.field('width')).toHaveValue(String(width));
    }
    const menu = await openMenu(page);
    await expect(menu.getByRole('listitem')).toHaveCount(1);
    await page.keyboard.press('Escape');
    await expect(menu).toBeHidden();
  });
  await test.step('a returning user never sees another bench than the kept one, not for a moment', async () => {
    await widen(bench, 77);
    await kept(page);
    await page.addInitScript(() => {
      const seen = new Set<string>();
      Object.assign(window, { seen });
      const look = () => {
        const heading = document.querySelector('.stage h2');
        if (heading && getComputedStyle(heading).visibility === 'visible') seen.add(heading.textContent);
        requestAnimationFrame(look);
      };
      requestAnimationFrame(look);
    });
    // Held back for two seconds at most, lest a store that never answers hide the page: here the seconds are long, so that
    // a busy machine has its time.
    const animations = await page.context().newCDPSession(page);
    await animations.send('Animation.enable');
    await animations.send('Animation.setPlaybackRate', { playbackRate: 0.05 });
    await page.reload();
    await expect(bench.field('width')).toBeVisible();
    expect(await page.evaluate(() => [...(window as unknown as { seen: Set<string> }).seen])).toEqual([
      'Flat plate'
    ]);
  });
});

test('a tab that is killed loses nothing that is older than half a second', async ({
  page,
  bench,
  context
}) => {
  await bench.open();
  await widen(bench, 91);
  await kept(page);
  const killer = await context.newCDPSession(page);
  const crashed = page.waitForEvent('crash');
  // The renderer dies in the middle of this and answers nothing.
  killer.send('Page.crash').catch(() => undefined);
  await crashed;
  const next = await context.newPage();
  await next.goto(test.info().project.use.baseURL!);
  await expect(next.getByRole('textbox', { name: 'width', exact: true })).toHaveValue('91');
  await next.close();
});

test('benches under their names: deleted, brought back, opened, renamed; then the store is full', async ({
  page,
  bench
}) => {
  test.setTimeout(180_000);
  await bench.open();
  await test.step('a deleted bench is brought back, by its button and by undo', async () => {
    await widen(bench, 66);
    await kept(page);
    let menu = await openMenu(page);
    await menu.getByRole('button', { name: 'Delete My bench' }).click();
    await expect(menu.getByRole('listitem')).toHaveCount(0);
    await expect(line(page)).toContainText('The demo bench');
    await menu.getByRole('button', { name: 'bring it back' }).click();
    await expect(menu.getByRole('listitem')).toHaveCount(1);
    await menu.getByRole('button', { name: 'My bench', exact: true }).click();
    await expect(bench.field('width')).toHaveValue('66');
    menu = await openMenu(page);
    await menu.getByRole('button', { name: 'Delete My bench' }).click();
    await expect(menu.getByRole('button', { name: 'bring it back' })).toBeVisible();
    await menu.getByRole('button', { name: 'undo' }).click();
    await expect(bench.field('width')).toHaveValue('66');
    await kept(page);
    await expect(menu.getByRole('listitem')).toHaveCount(1);
    await page.reload();
    await expect(bench.field('width')).toHaveValue('66');
  });
  await test.step('several benches: kept under names, opened, renamed; opening is undone with its name', async () => {
    await widen(bench, 60);
    await kept(page);
    let menu = await openMenu(page);
    await menu.getByRole('textbox', { name: 'another name' }).fill('Yard');
    await menu.getByRole('button', { name: 'keep under this name' }).click();
    await expect(line(page)).toContainText('Yard');
    await bench.type('width', '110');
    await kept(page);
    menu = await openMenu(page);
    await expect(menu).toContainText('in this browser on this device only');
    await menu.getByRole('textbox', { name: 'its name' }).fill('Main line');
    await menu.getByRole('textbox', { name: 'its name' }).press('Enter');
    await expect(menu.getByRole('listitem').first()).toContainText('Main line, on the bench');
    await menu.getByRole('button', { name: 'My bench', exact: true }).click();
    await expect(line(page)).toContainText('My bench');
    await expect(bench.field('width')).toHaveValue('60');
    await page.keyboard.press('Control+z');
    await expect(line(page)).toContainText('Main line');
    await expect(bench.field('width')).toHaveValue('110');
    await page.keyboard.press('Control+Shift+z');
    await expect(line(page)).toContainText('My bench');
    await kept(page);
    // Neither has overwritten the other.
    menu = await openMenu(page);
    await menu.getByRole('button', { name: 'Main line', exact: true }).click();
    await expect(bench.field('width')).toHaveValue('110');
  });
  await test.step('a full store says so, work goes on, and what is kept again later is told; axe finds nothing', async () => {
    await widen(bench, 70);
    await kept(page);
    await page.evaluate(() => {
      const put = IDBObjectStore.prototype.put;
      Object.assign(window, { mend: () => (IDBObjectStore.prototype.put = put) });
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('no room', 'QuotaExceededError');
      };
    });
    await bench.type('width', '75');
    const alert = page.getByRole('alert');
    await expect(alert).toContainText('store is full: your last changes are not kept in it');
    await expect(line(page)).toHaveAttribute('data-kept', 'refused');
    await expect(line(page)).toContainText('not kept');
    await test.step('axe finds nothing in the menu nor beside a refused store, in light and in dark', async () => {
      const found = async (part: string) => {
        for (const colorScheme of ['light', 'dark'] as const) {
          await page.emulateMedia({ colorScheme });
          expect(await axeFinds(page, {}, part), colorScheme).toEqual([]);
        }
      };
      await found('.strip');
      const menu = await openMenu(page);
      await found('.menu');
      await page.keyboard.press('Escape');
      await expect(menu).toBeHidden();
      await page.emulateMedia({ colorScheme: 'light' });
    });
    await bench.type('width', '76');
    await expect(bench.field('width')).toHaveValue('76');
    await page.evaluate(() => (window as unknown as { mend: () => void }).mend());
    await bench.type('width', '78');
    await kept(page);
    await expect(alert).toHaveCount(0);
  });
});

test('two tabs on one bench: neither overwrites the other, both ways out', async ({
  page,
  bench,
  context
}) => {
  await bench.open();
  await widen(bench, 50);
  await kept(page);
  const other = await context.newPage();
  await other.goto(test.info().project.use.baseURL!);
  const field = other.getByRole('textbox', { name: 'width', exact: true });
  await expect(field).toHaveValue('50');
  await field.fill('55');
  await field.press('Enter');
  await expect(line(other)).toHaveAttribute('data-kept', 'kept');

  await expect(line(page)).toHaveAttribute('data-kept', 'overtaken');
  await expect(page.getByRole('alert')).toContainText('Another tab has changed “My bench”');
  await bench.type('width', '52');
  await expect(bench.field('width')).toHaveValue('52');
  await page.getByRole('button', { name: 'take the other tab’s version' }).click();
  await expect(bench.field('width')).toHaveValue('55');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(bench.field('width')).toHaveValue('52');
  await kept(page);

  await expect(line(other)).toHaveAttribute('data-kept', 'overtaken');
  await other.getByRole('button', { name: 'keep mine under another name' }).click();
  await expect(line(other)).toContainText('My bench 2');
  await expect(line(other)).toHaveAttribute('data-kept', 'kept');
  await other.reload();
  await expect(field).toHaveValue('55');
  await page.reload();
  await expect(bench.field('width')).toHaveValue('52');
  await other.close();
});

const broken = [
  { what: 'no JSON', text: '{"format": ', says: /not JSON/ },
  { what: 'empty', text: '', says: /is empty/ },
  {
    what: 'a newer version',
    text: demoBenchText((b) => (b.version = BENCH_VERSION + 1)),
    says: new RegExp(`of version ${BENCH_VERSION + 1}`)
  },
  { what: 'nested deep', text: '['.repeat(100_000), says: /nested more than 16 levels/ },
  {
    what: 'a million setups',
    text: `{"format":"backwave-bench","version":1,"speakers":{},"setups":[${'{},'.repeat(999_999)}{}]}`,
    says: /million characters long/
  },
  {
    what: 'prototype keys',
    text: demoBenchText().replace('{', '{"__proto__":{"polluted":1},'),
    says: /unknown key "__proto__"/
  },
  {
    what: 'seven mounts',
    text: demoBenchText((b) => b.setups.push(b.setups[0], b.setups[0])),
    says: /holds 7 mounts; the shelf has room for 6/
  }
];

test('files: let go over the page, saved, opened; a broken one is refused, markup is text', async ({
  page,
  bench
}) => {
  test.setTimeout(180_000);
  await bench.open();
  await test.step('a broken file is refused in one sentence, and the bench is as it was', async () => {
    await bench.hear(3);
    for (const { what, text, says } of broken)
      await test.step(what, async () => {
        await dropFile(page, { name: 'bad.json', head: Buffer.from(text).toString('base64') });
        const alert = page.getByRole('alert');
        await expect(alert).toContainText(says);
        await expect(alert).toContainText('The bench is as it was');
        await bench.drawn();
        await expect(bench.stands).toHaveCount(4);
        await expect(heading(bench)).toHaveText('Cab body');
        await expect(line(page)).toContainText('My bench');
        expect(await page.evaluate(() => ({}) as { polluted?: 1 })).toEqual({});
        await alert.getByRole('button', { name: 'close' }).click();
        await expect(alert).toHaveCount(0);
      });
  });
  await test.step('a bench let go over the page opens', async () => {
    const head = readFileSync(demoBenchPath).toString('base64');
    await dropFile(page, { name: 'layout.backwave.json', head });
    await expect(bench.stands).toHaveCount(5);
    await expect(line(page)).toContainText('layout');
    await kept(page);
  });
  await test.step('markup in names and notes is shown as text', async () => {
    const markup = '<img src=x onerror="document.title=1"><script>document.title=2</script>';
    const text = demoBenchText((b) => {
      b.setups[0].name = markup;
      b.setups[0].notes = markup;
      b.speakers.oval.name = markup;
    });
    await dropFile(page, { name: '<b onclick=1>bold</b>.json', head: Buffer.from(text).toString('base64') });
    await expect(heading(bench)).toHaveText(markup);
    await expect(line(page)).toContainText('<b onclick=1>bold</b>');
    await expect(page.locator('main img, main script, header b[onclick]')).toHaveCount(0);
    await expect(page).toHaveTitle(/^Backwave/);
    await kept(page);
    await expect((await openMenu(page)).getByRole('listitem').first()).toContainText('<b onclick=1>bold</b>');
  });
  await test.step('save and open make a round trip by download and file input', async () => {
    await bench.afresh();
    await withoutFilePickers(page);
    await widen(bench, 64);
    const menu = await openMenu(page);
    await menu.getByRole('textbox', { name: 'another name' }).fill('No. 41: cab/roof');
    await menu.getByRole('button', { name: 'keep under this name' }).click();
    await expect(line(page)).toContainText('No. 41: cab/roof');
    const loading = page.waitForEvent('download');
    await page.keyboard.press('Control+s');
    const download = await loading;
    expect(download.suggestedFilename()).toBe('No. 41- cab-roof.backwave.json');
    const text = readFileSync(await download.path());
    await bench.type('width', '99');
    await openFromMenu(page, {
      name: download.suggestedFilename(),
      mimeType: 'application/json',
      buffer: text
    });
    await expect(bench.field('width')).toHaveValue('64');
    await expect(line(page)).toContainText('No. 41- cab-roof');
    await page.keyboard.press('Control+z');
    await expect(bench.field('width')).toHaveValue('99');
    await expect(line(page)).toContainText('No. 41: cab/roof');
    const asked = page.waitForEvent('filechooser');
    await page.keyboard.press('Control+o');
    await (await asked).setFiles(demoBenchPath);
    await expect(bench.stands).toHaveCount(5);
    await expect(line(page)).toContainText('demo-bench');
  });
  await test.step('where the browser lets it, save writes to the same file again', async () => {
    await bench.afresh();
    await withFilePicker(page);
    await widen(bench, 64);
    await page.keyboard.press('Control+s');
    await expect(page.getByText('Saved to yard.backwave.json.')).toBeVisible();
    // What is typed but not entered yet is saved with it.
    await bench.field('width').fill('68');
    await page.keyboard.press('Control+s');
    const widths = () =>
      page.evaluate(() =>
        (window as unknown as { saved: string[] }).saved.map((text) => JSON.parse(text).setups[1].mount.width)
      );
    await expect.poll(widths).toEqual([0.064, 0.068]);
    const menu = await openMenu(page);
    await menu.getByRole('button', { name: 'save to another file' }).click();
    // The picker was closed: nothing saved, nothing said.
    await expect
      .poll(() => page.evaluate(() => (window as unknown as { asked: () => number }).asked()))
      .toBe(2);
    expect(await widths()).toHaveLength(2);
    await expect(page.getByRole('alert')).toHaveCount(0);
  });
});
