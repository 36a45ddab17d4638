import type { Page } from '@playwright/test';
import { cases, expect, test } from '../helpers/page-fixture.js';

/** What has the focus: its role or tag and the name it goes by. */
function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    const one = document.activeElement!;
    const name = one.getAttribute('aria-label') ?? one.textContent?.trim().slice(0, 40) ?? '';
    return `${one.getAttribute('role') ?? one.tagName.toLowerCase()}: ${name}`;
  });
}

/** Tabs on until something whose description matches has the focus. */
async function tabTo(page: Page, what: RegExp, most = 80): Promise<void> {
  const seen: string[] = [];
  for (let i = 0; i < most; i++) {
    await page.keyboard.press('Tab');
    seen.push(await focused(page));
    if (what.test(seen.at(-1)!)) return;
  }
  throw new Error(`never reached ${what}; passed ${seen.join(' | ')}`);
}

// The lever is that of the engine of the demo bench.
test.use({ returning: false });

const { it, onOnePage } = cases();

it('without a mouse: play, listen, change a size, add, rename, copy, move and take off a mount', async ({
  page,
  bench
}) => {
  await tabTo(page, /button: Play/);
  await page.keyboard.press('Enter');
  await tabTo(page, /I am ready/, 6);
  await page.keyboard.press('Enter');
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');

  await tabTo(page, /slider: Throttle/);
  await page.keyboard.press('ArrowUp');
  await expect(page.getByText('notch 5')).toBeVisible();
  await tabTo(page, /switch: Same loudness/);
  await page.keyboard.press('Space');
  await expect(page.getByRole('switch')).toHaveAttribute('aria-checked', 'true');

  await tabTo(page, /button: \+ another mount/);
  await page.keyboard.press('Enter');
  await tabTo(page, /button: Railbus/, 12);
  await page.keyboard.press('Enter');
  await expect(bench.stage.getByRole('heading')).toHaveText('Railbus');
  await expect(bench.stands).toHaveCount(5);

  await tabTo(page, /slider: Railbus, width inside/);
  await page.keyboard.press('ArrowUp');
  await expect(bench.field('width inside')).toHaveValue('33');
  await tabTo(page, /summary: name, notes, place/);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('Railbus 7');
  await page.keyboard.press('Tab');
  await expect(bench.stage.getByRole('heading')).toHaveText('Railbus 7');
  await page.keyboard.type('roof glued');
  await tabTo(page, /button: move left/, 4);
  await page.keyboard.press('Enter');
  await expect(bench.stand(4).getByRole('heading')).toHaveText('Railbus 7');
  await tabTo(page, /button: duplicate/, 4);
  await page.keyboard.press('Enter');
  await expect(bench.stands).toHaveCount(6);
  await expect(bench.stage.getByRole('heading')).toHaveText('Railbus 7 again');
  await tabTo(page, /button: take off/, 90);
  await page.keyboard.press('Enter');
  await expect(bench.stands).toHaveCount(5);

  await page.keyboard.press('Control+z');
  await expect(bench.stands).toHaveCount(6);
  for (let i = 0; i < 12; i++) await page.keyboard.press('Control+z');
  await expect(bench.stands).toHaveCount(4);
  await expect(page.getByText('notch 4')).toBeVisible();
});

it('without a mouse: the speaker, the units and the air', async ({ page, bench }) => {
  await bench.stage.getByRole('heading').click();
  await tabTo(page, /^select: /);
  await page.keyboard.press('ArrowDown');
  await expect(bench.speakerChoice.locator('option:checked')).toHaveText('20 × 40 mm');
  await tabTo(page, /button: inches instead/);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Digit2');
  await expect(bench.field('width')).toHaveValue('4 1/64');
  await bench.type('width', '3 1/2');
  await expect(bench.field('width')).toHaveValue('3.5');

  // Enter has left the field: the next keys are the lab's, and one tabs on from where one was.
  expect(await focused(page)).toBe('group: width');
  await page.keyboard.press('Control+z');
  await expect(bench.field('width')).toHaveValue('4 1/64');
  await page.keyboard.press('Control+Shift+z');
  await expect(bench.field('width')).toHaveValue('3.5');
  await page.keyboard.press('Digit1');
  await expect(bench.stage.getByRole('heading')).toHaveText('Free air');
  await page.keyboard.press('Digit2');
  await expect(bench.field('width')).toHaveValue('3.5');
  await bench.type('width', '3.5');
  await page.keyboard.press('Tab');
  expect(await focused(page)).toBe('button: width: 1 mm less');

  await bench.type('width', '1/0');
  await expect(bench.knob('width').getByRole('alert')).toContainText('must be a length');
  await expect(bench.field('width')).toBeFocused();
  await expect(bench.shelf).toContainText('3.5 in');
});

it('same loudness levels what is heard and leaves the figures on the screen', async ({ page, bench }) => {
  await bench.play();
  await bench.measured();
  const before = await bench.shelf.locator('ol').innerText();
  await page.keyboard.press('KeyL');
  await expect(page.getByRole('switch')).toHaveAttribute('aria-checked', 'true');
  await bench.drawn();
  expect(await bench.shelf.locator('ol').innerText()).toBe(before);
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('switch')).toHaveAttribute('aria-checked', 'false');
  await page.keyboard.press('Control+Shift+z');
  await expect(page.getByRole('switch')).toHaveAttribute('aria-checked', 'true');
});

test('without a mouse', onOnePage);
