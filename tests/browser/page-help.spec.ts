import type { Locator, Page } from '@playwright/test';
import { axeFinds, OF_COLOURS } from '../helpers/page-axe.js';
import { clickUntil } from '../helpers/page-click.js';
import { cases, expect, test } from '../helpers/page-fixture.js';

/** How long each mount of the second step is heard (screens/help/audition.svelte.ts). */
const TURN_MS = 2500;

const help = (page: Page): Locator => page.getByRole('dialog', { name: 'What goes on here' });

async function openHelp(page: Page): Promise<Locator> {
  await clickUntil(page.getByRole('button', { name: 'how it works', exact: true }), help(page));
  return help(page);
}

/** What lies behind the dialog is looked at in page-looks; what the dark colours can change is contrast. */
async function axe(page: Page, state: string, asked: 'all' | 'colours'): Promise<void> {
  const options = asked === 'all' ? {} : { runOnly: { type: 'rule', values: OF_COLOURS } as const };
  expect(await axeFinds(page, options, 'dialog[open]'), state).toEqual([]);
}

const heard = (page: Page): Locator => page.locator('section.stage header .disc');

const { it, onOnePage } = cases();

it('what was silent before is silent again; the ear check comes first', async ({ page, bench }) => {
  await openHelp(page);
  const plate = help(page).getByRole('listitem').nth(2);
  await plate.getByRole('button', { name: 'hear it' }).click();
  await page.getByRole('button', { name: 'I am ready: play' }).click();
  await expect(plate).toContainText('you hear 2, Flat plate');
  await plate.getByRole('button', { name: 'stop' }).click();
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Play');
  await expect(heard(page)).toHaveText('1');
  await plate.getByRole('button', { name: 'hear it' }).click();
  await expect(plate).toContainText('you hear 2, Flat plate');
  await help(page).getByRole('button', { name: 'Close' }).click();
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Play');
  await expect(heard(page)).toHaveText('1');
});

it('eight steps, drawn, each plays its mount; closing puts back what was heard', async ({ page, bench }) => {
  await bench.hear(4);
  await bench.play();
  await openHelp(page);
  const steps = help(page).getByRole('listitem');
  await expect(steps).toHaveCount(8);
  await expect(steps.locator('svg')).toHaveCount(8);
  for (const [i, numeral] of [
    [0, '1'],
    [2, '2'],
    [3, '3'],
    [4, '4']
  ] as const) {
    await steps.nth(i).getByRole('button', { name: 'hear it' }).click();
    await expect(steps.nth(i)).toContainText(`you hear ${numeral},`);
    await expect(heard(page)).toHaveText(numeral);
    await expect(help(page).getByRole('button', { name: 'stop' })).toHaveCount(1);
  }
  // The string: short and long in turns.
  await steps.nth(1).getByRole('button', { name: 'hear it' }).click();
  for (const numeral of ['1', '2', '1']) {
    await expect(steps.nth(1)).toContainText(`you hear ${numeral},`);
    await page.clock.fastForward(TURN_MS);
  }
  await page.keyboard.press('Escape');
  await expect(help(page)).toBeHidden();
  await expect(heard(page)).toHaveText('4');
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
  // And the turns have ended.
  await page.clock.fastForward(2 * TURN_MS);
  await bench.drawn();
  await expect(heard(page)).toHaveText('4');
});

it('a step whose mount is not on the shelf says what to put there', async ({ page, bench }) => {
  await bench.hear(2);
  await page.getByText('name, notes, place').click();
  await page.getByRole('button', { name: 'take off the shelf' }).click();
  await expect(bench.stands).toHaveCount(3);
  await openHelp(page);
  const steps = help(page).getByRole('listitem');
  for (const i of [1, 2]) {
    await expect(steps.nth(i)).toContainText('Put a plate on the shelf to hear this.');
    await expect(steps.nth(i).getByRole('button')).toHaveCount(0);
  }
  await expect(steps.nth(3).getByRole('button', { name: 'hear it' })).toBeVisible();
});

it('three parts by keyboard; the focus goes back to where it came from', async ({ page }) => {
  await openHelp(page);
  const tab = (name: string) => help(page).getByRole('tab', { name });
  await tab('how it works').focus();
  await page.keyboard.press('ArrowRight');
  await expect(tab('what it leaves out')).toBeFocused();
  await expect(help(page).getByRole('tabpanel')).toContainText('5 to 21 dB');
  await expect(help(page).getByRole('tabpanel')).toContainText('9 dB too low');
  const apart = help(page).getByRole('table');
  await expect(apart.getByRole('rowheader', { name: 'Cab body' })).toHaveCount(2);
  await expect(apart.getByRole('row', { name: 'Closed box 8 kHz −0.6 +2.1 +2.7' })).toHaveCount(1);
  await page.keyboard.press('End');
  await expect(help(page).getByRole('tabpanel')).toContainText('H.870');
  await expect(help(page).getByRole('tabpanel')).toContainText('NIOSH');
  await page.keyboard.press('ArrowRight');
  await expect(tab('how it works')).toHaveAttribute('aria-selected', 'true');
  // No key of the bench acts behind it.
  await page.keyboard.press('Digit3');
  await expect(heard(page)).toHaveText('1');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: 'how it works', exact: true })).toBeFocused();
});

it('it opens from the list of keys, too', async ({ page }) => {
  await page.keyboard.press('?');
  await page.getByRole('button', { name: 'how it works, what it leaves out, cautions' }).click();
  await expect(page.getByRole('dialog', { name: 'All keys' })).toBeHidden();
  await expect(help(page)).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(help(page)).toBeHidden();
});

it('axe finds nothing, nothing runs out sideways, on a desk and on a phone, in light and in dark', async ({
  page
}) => {
  for (const [width, height] of [
    [1440, 900],
    [390, 844]
  ]) {
    await page.setViewportSize({ width, height });
    await openHelp(page);
    for (const name of ['how it works', 'what it leaves out', 'cautions']) {
      await help(page).getByRole('tab', { name }).click();
      const panel = help(page).getByRole('tabpanel');
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        expect(await panel.evaluate((it) => it.scrollWidth - it.clientWidth), name).toBe(0);
        await axe(page, `${name}, ${width} px, ${colorScheme}`, colorScheme === 'light' ? 'all' : 'colours');
      }
    }
    await page.keyboard.press('Escape');
    await expect(help(page)).toBeHidden();
  }
});

// The turns of the second step are those of a clock that can be put forward.
test.beforeEach(async ({ page }) => {
  await page.clock.install();
});
test('the help', onOnePage);
