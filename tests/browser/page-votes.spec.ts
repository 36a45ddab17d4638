import { readFile } from 'node:fs/promises';
import type { Locator, Page } from '@playwright/test';
import { readBenchFile } from '../../src/lib/file/read-bench-file.js';
import { axeFinds } from '../helpers/page-axe.js';
import { everything } from '../helpers/page-everything.js';
import { expect, test } from '../helpers/page-fixture.js';
import { OWN_BENCH } from '../helpers/page-own-bench.js';
import { wrongInProjector } from '../helpers/page-projector.js';

const NAMES = readBenchFile(OWN_BENCH).setups.map(({ name }) => name);

const HALLS = [
  { width: 1920, height: 1080 },
  { width: 1280, height: 800 },
  { width: 1024, height: 768 }
];

const view = (page: Page): Locator => page.getByRole('main', { name: 'Hall vote' });
const card = (page: Page, letter: string): Locator => page.getByRole('button', { name: `hear ${letter}` });

/** Nothing is wrong in any of the halls. */
async function fitsEverywhere(page: Page, what: string, drawn = false): Promise<void> {
  for (const size of HALLS) {
    await page.setViewportSize(size);
    await page.evaluate(
      () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))
    );
    expect(await wrongInProjector(page, { drawn }), `${what}, ${size.width} × ${size.height}`).toEqual([]);
  }
}

/** Nothing for axe to find, and contrast of 7:1 throughout, on light and on dark. */
async function canBeSeen(page: Page): Promise<void> {
  const rules = { 'color-contrast-enhanced': { enabled: true } };
  expect(await axeFinds(page, { rules })).toEqual([]);
  await page.keyboard.press('i');
  expect(
    await axeFinds(page, { rules, runOnly: { type: 'rule', values: ['color-contrast-enhanced'] } })
  ).toEqual([]);
  await page.keyboard.press('i');
}

/** Goes to something by the key that goes from one to the next. */
async function tabTo(page: Page, what: Locator): Promise<void> {
  for (let i = 0; i < 40; i++) {
    if (await what.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error('the keyboard does not come there');
}

test('a vote by keyboard tells nothing before the names are shown, goes on after a reload, and is kept', async ({
  page,
  bench: lab
}) => {
  test.setTimeout(120_000);
  // A window that fills the screen cannot be made another size.
  await page.addInitScript(() => {
    Element.prototype.requestFullscreen = () => Promise.reject(new TypeError('fullscreen refused'));
  });
  await lab.open();
  await lab.play();
  await page.evaluate(() => (document.activeElement as HTMLElement).blur());
  const before = await page.evaluate(() => history.length);

  await test.step('the plan', async () => {
    await page.keyboard.press('v');
    await expect(page.getByRole('heading', { name: 'Let the hall vote' })).toBeVisible();
    expect(await axeFinds(page)).toEqual([]);
    // Free air and the plate are chosen; the box comes to them.
    await tabTo(page, page.getByRole('checkbox', { name: 'Closed box' }));
    await page.keyboard.press('Space');
    await expect(page.getByText('Which one is the box?')).toBeVisible();
    await expect(page.getByRole('button', { name: 'begin the vote' })).toBeEnabled();
    await page.keyboard.press('Enter');
    await expect(view(page)).toBeFocused();
  });

  const heard: string[][] = [];
  /** What the page tells while the hall hears, letter by letter. */
  async function hearAll(round: number): Promise<void> {
    const told: string[] = [];
    for (const letter of ['B', 'C', 'A', 'B', 'C', 'B', 'C']) {
      // Nothing of the bench answers.
      for (const key of ['KeyP', 'KeyL', 'KeyT', 'KeyW', 'Digit3', 'ArrowUp']) await page.keyboard.press(key);
      await page.keyboard.press(letter.toLowerCase());
      await expect(view(page)).toContainText(`You hear ${letter}`);
      await expect(card(page, letter)).toHaveAttribute('aria-pressed', 'true');
      await lab.drawn();
      // The controls of the view go by themselves after a while.
      const all = (await everything(page)).replaceAll(`Round ${round}`, 'Round');
      told.push(
        all.replace(' shown"', '"').replace('<html lang="en" class="still">', '<html lang="en" class="">')
      );
    }
    await page.keyboard.press('PageDown');
    await expect(view(page)).toContainText('You hear A');
    for (const all of told)
      for (const word of [...NAMES, 'mount-', 'oval', 'dB', 'LUFS']) expect(all).not.toContain(word);
    // What stands there depends on the letter alone.
    expect(told.slice(5)).toEqual(told.slice(3, 5));
    heard.push(told.slice(3));
  }

  await test.step('the hall hears', async () => {
    await hearAll(1);
    await fitsEverywhere(page, 'the hall hears');
    await canBeSeen(page);
  });

  await test.step('hands are counted, across a reload; of the others no figure is told', async () => {
    await page.keyboard.press('Enter');
    await page.keyboard.press('1');
    await page.keyboard.press('2');
    await expect(page.getByLabel('hands for A')).toHaveText('12');
    await fitsEverywhere(page, 'hands are counted');
    await canBeSeen(page);
    await page.keyboard.press('Enter');
    for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowDown');
    await expect(page.getByLabel('hands for B')).toHaveText('4');
    await expect(view(page)).not.toContainText('12');
    await page.reload();
    await expect(view(page)).toContainText('Hands up for A');
    await expect(page.getByLabel('hands for A')).toHaveText('12');
    await expect(view(page)).toContainText('Nothing is heard now');
    expect(await view(page).innerText()).not.toMatch(new RegExp(NAMES.join('|')));
    await page.keyboard.press('Space');
    await page.getByRole('button', { name: 'I am ready: play' }).click();
    await expect(view(page)).not.toContainText('Nothing is heard now');
    // By touch as well; the next key is the view's again.
    await card(page, 'B').click();
    await page.getByRole('button', { name: 'a hand more for B' }).click();
    await page.getByRole('button', { name: 'a hand less for B' }).click();
    await expect(page.getByLabel('hands for B')).toHaveText('4');
    await page.keyboard.press('Enter');
    await expect(view(page)).toContainText('Hands up for C');
    await page.keyboard.press('2');
    await page.keyboard.press('Enter');
    await expect(view(page)).toContainText('18 hands are counted');
    const told = await everything(page);
    for (const word of [...NAMES, 'mount-', 'oval', 'dB']) expect(told).not.toContain(word);
    expect(await view(page).innerText()).not.toMatch(/\b(?:12|4|2)\b/);
    await fitsEverywhere(page, 'all are counted');
  });

  await test.step('the names are shown, covered by one key, and shown again', async () => {
    await page.keyboard.press('Enter');
    const result = page.getByRole('heading', { level: 1 });
    await expect(result).toHaveText(/^A, (Free air|Flat plate|Closed box): 12 of 18 hands$/);
    await page.keyboard.press('Backspace');
    await expect(view(page)).toContainText('18 hands are counted');
    await page.keyboard.press('Enter');
    await expect(view(page)).toContainText('The names had been seen before.');
    const names = await view(page).locator('li .name').allInnerTexts();
    expect(names.toSorted()).toEqual(['Closed box', 'Flat plate', 'Free air']);
    await expect(view(page).locator('li .drawing svg')).toHaveCount(3);
    await expect(view(page).locator('path[data-curve]')).toHaveCount(3);
    await fitsEverywhere(page, 'the names are shown', true);
    await canBeSeen(page);
  });

  await test.step('the next rounds tell as little, whatever is behind their letters', async () => {
    for (const round of [2, 3]) {
      await page.keyboard.press('Enter');
      await hearAll(round);
      await page.keyboard.press('Enter');
      await page.keyboard.press('9');
      for (const key of ['Enter', 'Enter', 'Enter', 'Enter']) await page.keyboard.press(key);
      await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^A, .*: all 9 hands$/);
    }
    expect(heard[2]).toEqual(heard[1]);
  });

  await test.step('the table of rounds, which is saved and kept', async () => {
    await page.keyboard.press('Escape');
    await expect(page.getByRole('row')).toHaveCount(4);
    await fitsEverywhere(page, 'the rounds');
    await canBeSeen(page);
    const saving = page.waitForEvent('download');
    await tabTo(page, page.getByRole('button', { name: 'save all rounds as CSV' }));
    await page.keyboard.press('Enter');
    const csv = await readFile(await (await saving).path(), 'utf8');
    expect(
      csv.match(
        /^[123],\d{4}-\d\d-\d\d,Which sounds fullest\?,Single puffs,hand,,rule,same loudness,shown,/gm
      )
    ).toHaveLength(9);
    expect(await page.evaluate(() => history.length)).toBe(before);
    await page.keyboard.press('Escape');
    await expect(lab.stands).toHaveCount(4);
    await expect(lab.stage.locator('header .disc')).toHaveText('1');
  });
});
