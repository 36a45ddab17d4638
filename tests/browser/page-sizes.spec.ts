import type { Page } from '@playwright/test';
import type { BenchPage } from '../helpers/page-bench.js';
import { expect, test } from '../helpers/page-fixture.js';

test.beforeEach(async ({ bench }) => {
  await bench.open();
});

/** Pixels a millimetre of the section: the two handles of a size are as far apart as the size is large. */
async function sectionScale(bench: BenchPage, millimetres: number): Promise<number> {
  const xs = await bench.stage
    .locator('.main g.handle')
    .evaluateAll((all) =>
      all.map((one) => Number(/translate\(([-\d.]+)/.exec(one.getAttribute('transform')!)![1]))
    );
  return (Math.max(...xs) - Math.min(...xs)) / millimetres;
}

async function number(bench: BenchPage, label: string): Promise<number> {
  return Number((await bench.field(label).inputValue()).replace('−', '-'));
}

/** Opens a stand and waits until its drawing stands still. */
async function show(bench: BenchPage, numeral: number): Promise<void> {
  await bench.hear(numeral);
  await bench.settled();
}

test('dragging the plate’s edge: size, string, rule and curve follow the hand', async ({ bench }) => {
  await show(bench, 2);
  const scale = await sectionScale(bench, 102);
  const curve = (await bench.curve()).join();
  const rule = bench.stage.locator('.rule rect');
  const ruleBefore = Number(await rule.getAttribute('width'));
  const level = (await bench.level(2))!;

  await bench.drag(bench.handle('Flat plate, width'), -30, 0);
  // Both edges move, so the size changes by twice the drag; it snaps to half millimetres.
  const expected = 102 - (2 * 30) / scale;
  const narrower = await number(bench, 'width');
  // The handle that the keyboard reaches stands left or right of the speaker.
  const turned = narrower < 102 ? narrower : 204 - narrower;
  expect(Math.abs(turned - expected)).toBeLessThan(0.51);
  expect(narrower * 2).toBeCloseTo(Math.round(narrower * 2), 6);
  await expect(bench.stage.locator('.way')).toHaveText(`nearest way round: ${narrower} mm`);
  expect(Number(await rule.getAttribute('width'))).not.toBeCloseTo(ruleBefore, 1);
  await expect.poll(async () => (await bench.curve()).join()).not.toBe(curve);
  await expect(bench.handle('Flat plate, width')).toHaveAttribute(
    'aria-valuetext',
    `${narrower} mm, string ${narrower} mm`
  );

  await bench.type('width', '40');
  await expect.poll(() => bench.level(2)).toBeLessThan(level);
});

test('a drag far beyond the ends stops at them', async ({ bench }) => {
  await show(bench, 2);
  await bench.drag(bench.handle('Flat plate, width'), 600, 0);
  const one = await number(bench, 'width');
  await bench.drag(bench.handle('Flat plate, width'), -900, 0);
  const other = await number(bench, 'width');
  expect([one, other].sort((a, b) => a - b)).toEqual([28, 200]);
});

test('dragging the speaker in the plan moves it both ways, and shortens the string', async ({ bench }) => {
  await show(bench, 2);
  const rim = (await bench.stage.locator('.plan rect.mount').boundingBox())!;
  const scale = (rim.width - 2) / 152;
  await bench.drag(bench.handle('Flat plate, place of the speaker'), 20, -12);
  const [along, across] = [await number(bench, 'speaker, along'), await number(bench, 'speaker, across')];
  expect(Math.abs(along - 20 / scale)).toBeLessThan(0.8);
  expect(Math.abs(across + 12 / scale)).toBeLessThan(0.8);
  const string = Math.round((102 - 2 * Math.abs(across)) * 10) / 10;
  await expect(bench.stage.locator('.way')).toHaveText(`nearest way round: ${string} mm`);
  await expect(bench.stage.locator('.problem')).toHaveCount(0);
});

test('dragging the box’s floor makes it deeper, and the resonance falls', async ({ bench }) => {
  await show(bench, 4);
  const resonance = async () => {
    const text = await bench.stage.locator('.findings .said > b').innerText();
    return Number.parseFloat(text) * (text.includes('kHz') ? 1000 : 1);
  };
  const before = await resonance();
  await bench.drag(bench.handle('Closed box, depth inside'), 0, 40);
  const depth = await number(bench, 'depth inside');
  expect(depth).toBeGreaterThan(20);
  expect(await resonance()).toBeLessThan(before);
  await expect(bench.stage.locator('.findings')).toContainText(
    `Inside ${((42 * 29 * depth) / 1000).toFixed(1)} cm³`
  );
});

test('dragging the shell’s wall and its foot', async ({ bench }) => {
  await show(bench, 3);
  const string = async () =>
    Number.parseFloat((await bench.stage.locator('.way').textContent())!.split(': ')[1]);
  const before = await string();
  const scale = await sectionScale(bench, 33);
  await bench.drag(bench.handle('Cab body, width inside'), 30, 0);
  const width = await number(bench, 'width inside');
  expect(Math.abs(width - (33 + 60 / scale))).toBeLessThan(0.6);
  // Over the wall and back under the roof: half the width and the height on either side.
  expect(Math.abs((await string()) - before - (width - 33))).toBeLessThan(0.2);
  await bench.drag(bench.handle('Cab body, height inside'), 0, 20);
  expect(await number(bench, 'height inside')).toBeGreaterThan(41);
});

test('a plan’s end can be dragged, too', async ({ bench }) => {
  await show(bench, 2);
  await bench.drag(bench.handle('Flat plate, length'), -15, 0);
  expect(await number(bench, 'length')).toBeLessThan(150);
  expect(await number(bench, 'width')).toBe(102);
});

test('arrow keys on a handle turn it by millimetres, with Shift by ten', async ({ page, bench }) => {
  await show(bench, 2);
  await bench.handle('Flat plate, width').focus();
  await page.keyboard.press('ArrowRight');
  expect(await number(bench, 'width')).toBe(103);
  await page.keyboard.press('ArrowDown');
  expect(await number(bench, 'width')).toBe(102);
  await page.keyboard.press('Shift+ArrowLeft');
  expect(await number(bench, 'width')).toBe(92);
  await bench.handle('Flat plate, place of the speaker').focus();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowRight');
  expect(await number(bench, 'speaker, across')).toBe(-1);
  expect(await number(bench, 'speaker, along')).toBe(1);
});

test('the steppers turn a size by a millimetre', async ({ page, bench }) => {
  await show(bench, 2);
  await page.getByRole('button', { name: 'width: 1 mm more' }).first().click();
  expect(await number(bench, 'width')).toBe(103);
  await page.getByRole('button', { name: 'length: 1 mm less' }).click();
  expect(await number(bench, 'length')).toBe(151);
});

test('a typed size is taken: with a comma, with blanks, to a tenth', async ({ bench }) => {
  await show(bench, 2);
  for (const [typed, taken] of [
    ['88', '88'],
    ['12,5', '12.5'],
    [' 91.25 ', '91.3'],
    ['10 cm', '100'],
    ['4 in', '101.6']
  ]) {
    // 12,5 mm would be less than the speaker's rim across: it goes into the offset.
    const label = typed === '12,5' ? 'speaker, along' : 'width';
    await bench.type(label, typed);
    await expect(bench.field(label)).toHaveValue(taken);
    await expect(bench.stage.getByRole('alert')).toHaveCount(0);
  }
  await bench.type('speaker, across', '−3,5');
  await expect(bench.field('speaker, across')).toHaveValue('−3.5');
});

test('what is no size is refused in one sentence at its field, and nothing changes', async ({ bench }) => {
  await show(bench, 2);
  const curve = await bench.curve();
  for (const typed of ['0', '-5', 'abc', '9999', '', '1e9', '12 mm', 'Infinity', 'NaN'])
    await test.step(`"${typed}"`, async () => {
      const level = await bench.level(2);
      const before = await bench.shelf.locator('ol').innerText();
      await bench.type('width', typed);
      const alert = bench.knob('width').getByRole('alert');
      await expect(alert).toHaveText(
        /^width must be (within 28 … 200 mm, got −?[\d.]+ mm|a length, as 102, 1 9\/16 in or 4.5 cm)$/
      );
      await expect(bench.field('width')).toHaveAttribute('aria-invalid', 'true');
      await expect(bench.stage.getByRole('alert')).toHaveCount(1);
      expect(await bench.shelf.locator('ol').innerText()).toBe(before);
      expect(await bench.curve()).toEqual(curve);
      expect(await bench.level(2)).toBe(level);
      await expect(bench.field('length')).toHaveValue('152');
      // A size that can be takes the sentence away.
      for (const size of ['90', '102']) {
        await bench.type('width', size);
        await expect(alert).toHaveCount(0);
        await expect(bench.field('width')).toHaveValue(size);
      }
      await expect.poll(() => bench.level(2)).toBe(level);
      await expect.poll(() => bench.curve()).toEqual(curve);
    });
});

test('the sentence goes and the field shows the size again once it is turned in another way', async ({
  page,
  bench
}) => {
  await show(bench, 2);
  await bench.type('width', 'abc');
  await expect(bench.knob('width').getByRole('alert')).toHaveCount(1);
  await page.getByRole('button', { name: 'width: 1 mm more' }).first().click();
  await expect(bench.knob('width').getByRole('alert')).toHaveCount(0);
  await expect(bench.field('width')).toHaveValue('103');
  await bench.type('width', 'abc');
  await bench.handle('Flat plate, width').focus();
  await page.keyboard.press('ArrowRight');
  await expect(bench.field('width')).toHaveValue('104');
  await expect(bench.knob('width').getByRole('alert')).toHaveCount(0);
});

test('an offset typed beyond the rim is refused, and a size that would let the rim stick out too', async ({
  bench
}) => {
  await show(bench, 2);
  await bench.type('speaker, along', '57');
  await expect(bench.knob('speaker, along').getByRole('alert')).toHaveText(
    'speaker, along must be within −56 … 56 mm, got 57 mm'
  );
  await bench.type('speaker, along', '56');
  await expect(bench.knob('speaker, along').getByRole('alert')).toHaveCount(0);
  await bench.type('length', '100');
  await expect(bench.knob('length').getByRole('alert')).toHaveText(
    'length must be within 152 … 200 mm, got 100 mm'
  );
});

test('a plate made round and back keeps its reach', async ({ page, bench }) => {
  await show(bench, 2);
  await page.getByRole('button', { name: 'make it round' }).click();
  await expect(bench.field('diameter')).toHaveValue('152');
  await expect(bench.stage.locator('.way')).toHaveText('nearest way round: 152 mm');
  await bench.settled();
  await bench.drag(bench.handle('Flat plate, diameter'), -20, 0);
  expect(await number(bench, 'diameter')).not.toBe(152);
  await page.getByRole('button', { name: 'make it a rectangle' }).click();
  expect(await number(bench, 'length')).toBe(await number(bench, 'width'));
  await expect(bench.stage.getByRole('alert')).toHaveCount(0);
});

test('a shell’s ends open and close; the ring is said of closed ones only', async ({ page, bench }) => {
  await show(bench, 3);
  await expect(bench.stage).toContainText('It rings there too');
  await page.getByRole('button', { name: 'open the ends' }).click();
  await expect(bench.stage).not.toContainText('It rings there too');
  await expect(page.getByText(/rings here/)).toHaveCount(0);
  await page.getByRole('button', { name: 'close the ends' }).click();
  await expect(bench.stage).toContainText('It rings there too');
});

test('the speaker is laid across and along again; where it does not fit, a sentence says so', async ({
  page,
  bench
}) => {
  await show(bench, 2);
  await page.getByRole('button', { name: 'lay the speaker across' }).click();
  await page.getByRole('button', { name: 'lay the speaker along' }).click();
  await expect(bench.stage.getByRole('alert')).toHaveCount(0);
  await show(bench, 3);
  await page.getByRole('button', { name: 'lay the speaker across' }).click();
  await expect(bench.stage.getByRole('alert')).toHaveText(/the frame .* does not fit across the shell/i);
  await expect(page.getByRole('button', { name: 'lay the speaker across' })).toBeVisible();
  await expect(bench.field('width inside')).toHaveValue('33');
});

test('a size that changes nothing in this model says so beside itself', async ({ bench }) => {
  await show(bench, 3);
  const before = await bench.level(3);
  await expect(bench.knob('length inside')).toContainText('changes nothing here');
  await expect(bench.knob('height inside')).not.toContainText('changes nothing here');
  const curve = await bench.curve();
  await bench.type('length inside', '170');
  expect(await bench.curve()).toEqual(curve);
  expect(await bench.level(3)).toBe(before);
});

/** Notes in the page, frame by frame, every width that the field shows until the plate grows no more. */
async function watchGrowth(page: Page, bench: BenchPage): Promise<void> {
  await bench.field('width').evaluate((field) => {
    const widths: number[] = [];
    (window as { widths?: number[] }).widths = widths;
    const look = (): void => {
      // The field is drawn anew with its mount.
      const now = field.isConnected ? Number((field as HTMLInputElement).value) : NaN;
      if (Number.isFinite(now) && widths.at(-1) !== now) widths.push(now);
      requestAnimationFrame(look);
    };
    look();
  });
  await page.keyboard.press('g');
}

async function grown(page: Page, bench: BenchPage): Promise<number[]> {
  await expect(page.getByText('The plate grows')).toBeVisible();
  await expect(page.getByText('The plate grows')).toHaveCount(0, { timeout: 20_000 });
  await expect(bench.field('width')).toHaveValue('200');
  return page.evaluate(() => (window as { widths?: number[] }).widths!);
}

test('G lets the plate grow from the rim to 200 mm in six seconds, and it can be put back', async ({
  page,
  bench
}) => {
  await show(bench, 2);
  const began = Date.now();
  await watchGrowth(page, bench);
  const [before, ...seen] = await grown(page, bench);
  expect(Date.now() - began).toBeGreaterThan(5500);
  expect(before).toBe(102);
  expect(seen[0]).toBe(28);
  expect(seen.at(-1)).toBe(200);
  expect(await number(bench, 'length')).toBe(200);
  expect([...seen].sort((a, b) => a - b)).toEqual(seen);
  expect(new Set(seen).size).toBeGreaterThan(10);
  await page.getByRole('button', { name: 'Put it back' }).click();
  await expect(bench.field('width')).toHaveValue('102');
  await expect(bench.field('length')).toHaveValue('152');
  await expect(page.getByRole('button', { name: 'Put it back' })).toHaveCount(0);
});

test('any touch takes the growing plate over', async ({ page, bench }) => {
  await page.keyboard.press('g');
  await expect.poll(() => number(bench, 'width')).toBeGreaterThan(40);
  await page.mouse.click(5, 5);
  await expect(page.getByText('The plate grows')).toHaveCount(0);
  const stopped = await number(bench, 'width');
  await page.waitForTimeout(400);
  expect(await number(bench, 'width')).toBe(stopped);
  expect(stopped).toBeLessThan(200);
  // And so does a key.
  await page.keyboard.press('g');
  await expect.poll(() => number(bench, 'width')).toBeGreaterThan(35);
  await page.keyboard.press('3');
  await expect(page.getByText('The plate grows')).toHaveCount(0);
  await expect(bench.stage.getByRole('heading')).toHaveText('Cab body');
  await page.getByRole('button', { name: 'Put it back' }).click();
  await expect(bench.stage.getByRole('heading')).toHaveText('Flat plate');
  await expect(bench.field('width')).toHaveValue('102');
});

test.describe('with reduced motion', () => {
  test.use({ contextOptions: { reducedMotion: 'reduce' } });

  test('a mount stands there at once', async ({ page, bench }) => {
    await page.keyboard.press('2');
    const walls = bench.stage.locator('.main .wall');
    const at = await walls.getAttribute('d');
    await page.waitForTimeout(700);
    expect(await walls.getAttribute('d')).toBe(at);
  });

  test('the plate grows in steps', async ({ page, bench }) => {
    await show(bench, 2);
    await watchGrowth(page, bench);
    const seen = new Set(await grown(page, bench));
    seen.delete(102);
    expect(seen.size).toBeLessThanOrEqual(7);
    expect(seen.size).toBeGreaterThanOrEqual(5);
    expect(Math.max(...seen)).toBe(200);
  });
});
