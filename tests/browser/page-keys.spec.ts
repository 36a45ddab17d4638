import { clickUntil } from '../helpers/page-click.js';
import { cases, expect, test } from '../helpers/page-fixture.js';

const NAMES = ['Free air', 'Flat plate', 'Cab body', 'Closed box'];

const { it, onOnePage } = cases();

it('Escape closes the ear check, and nothing plays', async ({ page, bench }) => {
  await page.keyboard.press('Space');
  const check = page.getByRole('dialog', { name: 'Put headphones on' });
  await expect(check).toBeVisible();
  await page.keyboard.press('2');
  await bench.escape();
  await expect(check).toBeHidden();
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Play');
  await expect(bench.stage.getByRole('heading')).toHaveText('Free air');
});

it('digits and the number pad hear a mount; a numeral without a mount does nothing', async ({
  page,
  bench
}) => {
  const heard = bench.stage.getByRole('heading');
  for (const row of ['Digit', 'Numpad'])
    for (const numeral of [2, 3, 4, 1]) {
      await page.keyboard.press(`${row}${numeral}`);
      await expect(heard).toHaveText(NAMES[numeral - 1]);
    }
  for (const key of ['Digit5', 'Digit6', 'Digit7', 'Digit0', 'Numpad6']) {
    await page.keyboard.press(key);
    await expect(heard).toHaveText('Free air');
  }
});

it('on a French keyboard the digits’ places count, not the letters on them', async ({ page, bench }) => {
  const press = (code: string, key: string) =>
    page.evaluate(
      (init) =>
        document.body.dispatchEvent(
          new KeyboardEvent('keydown', { ...init, bubbles: true, cancelable: true })
        ),
      { code, key }
    );
  await press('Digit2', 'é');
  await expect(bench.stage.getByRole('heading')).toHaveText('Flat plate');
  await press('Digit3', '"');
  await expect(bench.stage.getByRole('heading')).toHaveText('Cab body');
  await press('KeyM', '?');
  await expect(page.getByRole('dialog', { name: 'All keys' })).toBeVisible();
  await bench.escape();
});

it('Page Down and Page Up step the mounts, round the ends', async ({ page, bench }) => {
  const heard = bench.stage.getByRole('heading');
  for (const name of ['Flat plate', 'Cab body', 'Closed box', 'Free air']) {
    await page.keyboard.press('PageDown');
    await expect(heard).toHaveText(name);
  }
  await page.keyboard.press('PageUp');
  await expect(heard).toHaveText('Closed box');
});

it('Space on a focused button only presses it', async ({ page, bench }) => {
  await page.getByRole('button', { name: 'Hear 3, Cab body' }).focus();
  await page.keyboard.press('Space');
  await expect(bench.stage.getByRole('heading')).toHaveText('Cab body');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  const notes = bench.stage.locator('details.about');
  await notes.locator('summary').focus();
  await page.keyboard.press('Space');
  await expect(notes).toHaveAttribute('open');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Play');
});

it('a held key does not play and stop in turns', async ({ page, bench }) => {
  await bench.play();
  await page.keyboard.down('Space');
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Play');
  for (let i = 0; i < 3; i++) await page.keyboard.down('Space');
  await page.keyboard.up('Space');
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Play');
  // A held arrow turns on.
  await bench.hear(2);
  for (let i = 0; i < 4; i++) await page.keyboard.down('ArrowRight');
  await page.keyboard.up('ArrowRight');
  await expect(bench.field('width')).toHaveValue('106');
});

it('the full stop silences and brings the sound back', async ({ page, bench }) => {
  await bench.play();
  await page.keyboard.press('.');
  await expect(bench.strip).toContainText('silenced: press . again');
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
  await page.keyboard.press('NumpadDecimal');
  await expect(bench.strip).not.toContainText('silenced');
});

it('arrows with nothing focused turn the size in hand, or the first one', async ({ page, bench }) => {
  await bench.hear(2);
  await page.keyboard.press('ArrowRight');
  await expect(bench.field('width')).toHaveValue('103');
  await page.keyboard.press('Shift+ArrowDown');
  await expect(bench.field('width')).toHaveValue('93');
  await bench.field('length').focus();
  await bench.field('length').blur();
  await page.keyboard.press('ArrowUp');
  await expect(bench.field('length')).toHaveValue('153');
  await expect(bench.field('width')).toHaveValue('93');
  await bench.hear(1);
  await page.keyboard.press('ArrowUp');
  await expect(bench.stage).toContainText('Nothing to drag here');
});

it('no key acts inside a text field, a list or a slider of the browser’s own', async ({ page, bench }) => {
  await bench.hear(2);
  const field = bench.field('width');
  await field.focus();
  await field.selectText();
  for (const key of ['3', '.', '4', 'g', '?', 'PageDown', 'Space', 'ArrowLeft'])
    await page.keyboard.press(key);
  await expect(bench.stage.getByRole('heading')).toHaveText('Flat plate');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Play');
  await expect(field).toHaveValue('3.4g? ');
  await expect(page.getByText('The plate grows')).toHaveCount(0);
  await field.fill('102');
  await page.getByRole('slider', { name: 'volume' }).focus();
  for (const key of ['3', 'PageDown', 'ArrowRight']) await page.keyboard.press(key);
  await expect(bench.stage.getByRole('heading')).toHaveText('Flat plate');
  await page.getByRole('combobox', { name: /levels against/ }).focus();
  await page.keyboard.press('3');
  await expect(bench.stage.getByRole('heading')).toHaveText('Flat plate');
  await expect(bench.field('width')).toHaveValue('102');
});

it('no key acts with Ctrl, Alt or Meta: those belong to the browser', async ({ page, bench }) => {
  const press = (modifier: string) =>
    page.evaluate(
      (held) =>
        document.body.dispatchEvent(
          new KeyboardEvent('keydown', {
            code: 'Digit2',
            key: '2',
            [held]: true,
            bubbles: true,
            cancelable: true
          })
        ),
      modifier
    );
  for (const modifier of ['ctrlKey', 'altKey', 'metaKey']) expect(await press(modifier)).toBe(true);
  await expect(bench.stage.getByRole('heading')).toHaveText('Free air');
});

it('the list of keys: "?" opens it, no key acts behind it, Escape closes it', async ({ page, bench }) => {
  await page.keyboard.press('?');
  const list = page.getByRole('dialog', { name: 'All keys' });
  await expect(list).toBeVisible();
  for (const key of ['2', 'g', 'PageDown', '.']) await page.keyboard.press(key);
  await expect(bench.stage.getByRole('heading')).toHaveText('Free air');
  await expect(page.getByText('The plate grows')).toHaveCount(0);
  await bench.escape();
  await expect(list).toBeHidden();
  await page.keyboard.press('2');
  await expect(bench.stage.getByRole('heading')).toHaveText('Flat plate');
  await clickUntil(page.getByRole('button', { name: '? all keys' }), list);
  await list.getByRole('button', { name: 'Close' }).click();
  await expect(list).toBeHidden();
});

it('single keys can be switched off, and "?" still finds the switch', async ({ page, bench }) => {
  await page.keyboard.press('?');
  const works = page.getByRole('checkbox', { name: 'single keys work' });
  await works.uncheck();
  await bench.escape();
  for (const key of ['2', 'g', '.', 'PageDown', 'Space']) await page.keyboard.press(key);
  await expect(bench.stage.getByRole('heading')).toHaveText('Free air');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Play');
  await expect(bench.strip).not.toContainText('silenced');
  await page.keyboard.press('?');
  await works.check();
  await bench.escape();
  await page.keyboard.press('2');
  await expect(bench.stage.getByRole('heading')).toHaveText('Flat plate');
});

it('a figure answers "what is this?" by key, and Escape puts the answer away', async ({ page, bench }) => {
  await bench.hear(2);
  const figure = bench.stage.getByRole('button', { name: /nearest way round/ });
  await figure.focus();
  await page.keyboard.press('Enter');
  const note = page.getByRole('note', { name: 'The string: nearest way round' });
  await expect(note).toBeVisible();
  await expect(note).toContainText('Source:');
  await bench.escape();
  await expect(note).toBeHidden();
});

it('the table can be scrolled by keys: they turn nothing meanwhile', async ({ page, bench }) => {
  await bench.hear(2);
  const left = page.getByRole('region', { name: /^What is left of the/ });
  await left.getByText('the figures as a table').click();
  const region = page.getByRole('region', { name: 'the figures as a table' });
  await region.focus();
  await page.keyboard.press('ArrowDown');
  await expect.poll(() => region.evaluate((one) => one.scrollTop)).toBeGreaterThan(0);
  await expect(bench.field('width')).toHaveValue('102');
  await page.keyboard.press('PageDown');
  await expect(bench.stage.getByRole('heading')).toHaveText('Flat plate');
  await page.keyboard.press('3');
  await expect(bench.stage.getByRole('heading')).toHaveText('Cab body');
});

it('the readout is moved by keys', async ({ page, bench }) => {
  await bench.hear(2);
  const readout = page.getByRole('slider', { name: 'read the curves at a frequency' });
  await readout.focus();
  const before = await readout.getAttribute('aria-valuetext');
  await page.keyboard.press('ArrowRight');
  await expect(readout).not.toHaveAttribute('aria-valuetext', before!);
  await expect(bench.field('width')).toHaveValue('102');
});

test('the keys', onOnePage);
