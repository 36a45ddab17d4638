import type { Page } from '@playwright/test';
import type { BenchPage } from '../helpers/page-bench.js';
import { cases, expect, test } from '../helpers/page-fixture.js';

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

const NO_LENGTH = 'a length, as 102, 1 9/16 in or 4.5 cm';

/** What is typed as a width, and what it must be instead. */
const refused = [
  ['0', 'within 28 … 200 mm, got 0 mm'],
  ['-5', 'within 28 … 200 mm, got −5 mm'],
  ['9999', 'within 28 … 200 mm, got 9999 mm'],
  ['12 mm', 'within 28 … 200 mm, got 12 mm'],
  ['abc', NO_LENGTH],
  ['', NO_LENGTH],
  ['1e9', NO_LENGTH],
  ['Infinity', NO_LENGTH],
  ['NaN', NO_LENGTH]
];

const { it, onOnePage } = cases();

it('dragging the plate’s edge: size, string, rule and curve follow the hand', async ({ bench }) => {
  await show(bench, 2);
  const scale = await sectionScale(bench, 102);
  const curve = (await bench.curve()).join();
  const rule = bench.stage.locator('.rule rect');
  const ruleBefore = Number(await rule.getAttribute('width'));
  await bench.measured();
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
  await expect
    .poll(async () => Math.abs(Number(await rule.getAttribute('width')) - ruleBefore))
    .toBeGreaterThan(0.05);
  await expect.poll(async () => (await bench.curve()).join()).not.toBe(curve);
  await expect(bench.handle('Flat plate, width')).toHaveAttribute(
    'aria-valuetext',
    `${narrower} mm, string ${narrower} mm`
  );

  await bench.type('width', '40');
  await expect.poll(() => bench.level(2)).toBeLessThan(level);
});

it('a drag far beyond the ends stops at them', async ({ bench }) => {
  await show(bench, 2);
  await bench.drag(bench.handle('Flat plate, width'), 600, 0);
  const one = await number(bench, 'width');
  // On its way it comes past the length, where the shortest string turns to the other plane.
  await bench.drag(bench.handle('Flat plate, width'), -900, 0, 60);
  const other = await number(bench, 'width');
  expect([one, other].sort((a, b) => a - b)).toEqual([28, 200]);
});

it('dragging the speaker in the plan moves it both ways, and shortens the string', async ({ bench }) => {
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

it('dragging the box’s floor makes it deeper, and the resonance falls', async ({ bench }) => {
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

it('dragging the shell’s wall and its foot', async ({ bench }) => {
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
  await expect.poll(() => number(bench, 'height inside')).toBeGreaterThan(41);
});

it('on the layout the height over the board is dragged, typed and refused, and the mount turned over', async ({
  page,
  bench
}) => {
  await show(bench, 2);
  await page.keyboard.press('b');
  await bench.drag(bench.handle('Flat plate, over the board'), 0, -30);
  const above = await number(bench, 'over the board');
  expect(above).toBeGreaterThan(40);
  expect(above * 2).toBeCloseTo(Math.round(above * 2), 6);
  await bench.type('over the board', '5');
  await expect(bench.stage.getByRole('alert')).toContainText('mm, got 5 mm');
  await bench.stage.getByRole('radio', { name: 'down' }).check();
  await bench.type('over the board', '6');
  await expect(bench.stage.getByText('6 mm', { exact: true })).toBeVisible();
  await page.keyboard.press('b');
  await expect(bench.field('over the board')).toHaveCount(0);
});

it('a chassis is added, dragged, refused and taken out', async ({ page, bench }) => {
  await show(bench, 3);
  await bench.stage.getByRole('button', { name: '+ add …' }).click();
  await page.getByRole('button', { name: /^a chassis/ }).click();
  const before = await number(bench, 'chassis, its top');
  await bench.drag(bench.handle('Cab body, chassis, its top'), 0, -20);
  expect(await number(bench, 'chassis, its top')).toBeGreaterThan(before + 2);
  await bench.type('slit at each side', '99');
  await expect(bench.stage.getByRole('alert')).toContainText(
    'slit at each side must be within 0 … 5 mm, got 99 mm'
  );
  await bench.type('slit at each side', '0.3');
  await expect(bench.stage.locator('.main').getByText('0.3 mm')).toBeVisible();
  await bench.stage.getByRole('button', { name: 'take out the chassis' }).click();
  await expect(bench.field('chassis, its top')).toHaveCount(0);
});

it('a second speaker is added, dragged in the plan, refused, wired and taken out', async ({
  page,
  bench
}) => {
  await show(bench, 2);
  await bench.stage.getByRole('button', { name: '+ add …' }).click();
  await page.getByRole('button', { name: /^a second speaker/ }).click();
  expect(await number(bench, 'second, along')).toBe(41);
  await bench.drag(bench.handle('Flat plate, place of the second speaker'), 12, 0);
  expect(await number(bench, 'second, along')).toBeGreaterThan(43);
  await bench.type('second, along', '12');
  await expect(bench.stage.getByRole('alert')).toContainText(
    'the second speaker lies over the first: their frames (40 × 28 mm) are 12 mm apart from middle to middle'
  );
  await bench.type('second, along', '45');
  await bench.stage.getByLabel('in series').check();
  await bench.stage.getByLabel('against it').check();
  await bench.stage.getByRole('button', { name: 'take out the second speaker' }).click();
  await expect(bench.field('second, along')).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(bench.stage.getByLabel('against it')).toBeChecked();
  expect(await number(bench, 'second, along')).toBe(45);
});

it('a plan’s end can be dragged, too', async ({ bench }) => {
  await show(bench, 2);
  await bench.drag(bench.handle('Flat plate, length'), -15, 0);
  await expect.poll(() => number(bench, 'length')).toBeLessThan(150);
  await expect(bench.field('width')).toHaveValue('102');
});

it('arrow keys on a handle turn it by millimetres, with Shift by ten', async ({ page, bench }) => {
  await show(bench, 2);
  await bench.handle('Flat plate, width').focus();
  await page.keyboard.press('ArrowRight');
  await expect(bench.field('width')).toHaveValue('103');
  await page.keyboard.press('ArrowDown');
  await expect(bench.field('width')).toHaveValue('102');
  await page.keyboard.press('Shift+ArrowLeft');
  await expect(bench.field('width')).toHaveValue('92');
  await bench.handle('Flat plate, place of the speaker').focus();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowRight');
  await expect(bench.field('speaker, across')).toHaveValue('−1');
  await expect(bench.field('speaker, along')).toHaveValue('1');
});

it('the steppers turn a size by a millimetre', async ({ page, bench }) => {
  await show(bench, 2);
  await page.getByRole('button', { name: 'width: 1 mm more' }).first().click();
  await expect(bench.field('width')).toHaveValue('103');
  await page.getByRole('button', { name: 'length: 1 mm less' }).click();
  await expect(bench.field('length')).toHaveValue('151');
});

it('a typed size is taken: with a comma, with blanks, to a tenth', async ({ bench }) => {
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

it('what is no size is refused in one sentence at its field, and nothing changes', async ({ bench }) => {
  await show(bench, 2);
  await bench.measured();
  const [level, curve] = [await bench.level(2), await bench.curve()];
  const shelf = await bench.shelf.locator('ol').innerText();
  const way = await bench.stage.locator('.way').textContent();
  for (const [typed, sentence] of refused)
    await test.step(`"${typed}"`, async () => {
      await bench.type('width', typed);
      const alert = bench.knob('width').getByRole('alert');
      await expect(alert).toHaveText(`width must be ${sentence}`);
      await expect(bench.field('width')).toHaveAttribute('aria-invalid', 'true');
      await expect(bench.stage.getByRole('alert')).toHaveCount(1);
      await bench.drawn();
      expect(await bench.shelf.locator('ol').innerText()).toBe(shelf);
      expect(await bench.curve()).toEqual(curve);
      expect(await bench.stage.locator('.way').textContent()).toBe(way);
      await expect(bench.field('length')).toHaveValue('152');
    });
  // A size that can be takes the sentence away.
  await bench.type('width', '40');
  await expect(bench.stage.getByRole('alert')).toHaveCount(0);
  await expect.poll(() => bench.level(2)).not.toBe(level);
  await bench.type('width', '102');
  await expect.poll(() => bench.level(2)).toBe(level);
  await expect.poll(() => bench.curve()).toEqual(curve);
});

it('the sentence goes and the field shows the size again once it is turned in another way', async ({
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

it('an offset typed beyond the rim is refused, and a size that would let the rim stick out too', async ({
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

it('a plate made round and back keeps its reach', async ({ page, bench }) => {
  await show(bench, 2);
  await page.getByRole('radio', { name: 'round' }).check();
  await expect(bench.field('diameter')).toHaveValue('152');
  await expect(bench.stage.locator('.way')).toHaveText('nearest way round: 152 mm');
  await bench.settled();
  await bench.drag(bench.handle('Flat plate, diameter'), -20, 0);
  await expect(bench.field('diameter')).not.toHaveValue('152');
  await page.getByRole('radio', { name: 'rectangle' }).check();
  expect(await number(bench, 'length')).toBe(await number(bench, 'width'));
  await expect(bench.stage.getByRole('alert')).toHaveCount(0);
});

it('a shell’s ends open and close; the ring is said of closed ones only', async ({ page, bench }) => {
  await show(bench, 3);
  await expect(bench.stage).toContainText('own air rings at');
  await page.getByRole('radio', { name: 'open' }).check();
  await expect(bench.stage).not.toContainText('own air rings at');
  await expect(page.getByText(/rings here/)).toHaveCount(0);
  await page.getByRole('radio', { name: 'closed' }).check();
  await expect(bench.stage).toContainText('own air rings at');
});

it('the speaker is laid across and along again; where it does not fit, a sentence says so', async ({
  page,
  bench
}) => {
  await show(bench, 2);
  await page.getByRole('radio', { name: 'across' }).check();
  await page.getByRole('radio', { name: 'along' }).check();
  await expect(bench.stage.getByRole('alert')).toHaveCount(0);
  await show(bench, 3);
  await page.getByRole('radio', { name: 'across' }).click();
  await expect(bench.stage.getByRole('alert')).toHaveText(/the frame .* does not fit across the shell/i);
  await expect(page.getByRole('radio', { name: 'along' })).toBeChecked();
  await expect(bench.field('width inside')).toHaveValue('33');
});

it('a size that changes nothing in this model says so beside itself', async ({ bench }) => {
  await show(bench, 3);
  await bench.measured();
  const before = await bench.level(3);
  await expect(bench.knob('length inside')).toContainText('no effect by the rule');
  await expect(bench.knob('height inside')).not.toContainText('no effect by the rule');
  // The mark of the ring, in which the length has a share, is an upright line.
  const curves = async () => (await bench.curve()).filter((d) => !/^M[\d.]+,[\d.]+V\d/.test(d));
  const curve = await curves();
  await bench.type('length inside', '170');
  await expect(bench.field('length inside')).toHaveValue('170');
  await bench.drawn();
  expect(await curves()).toEqual(curve);
  await bench.field('length inside').blur();
  // Another size is measured after it: its level can be there only when that of the length has been.
  await bench.hear(2);
  const plate = await bench.level(2);
  await bench.type('width', '40');
  await expect.poll(() => bench.level(2)).not.toBe(plate);
  expect(await bench.level(3)).toBe(before);
});

it('drawings for which there is no room for a moment, as behind the projector view, draw nothing false', async ({
  page,
  bench
}) => {
  await show(bench, 2);
  const drawings = page.locator('.string-scale, .stage .main');
  await expect(drawings).toHaveCount(2);
  // A browser that is told of a negative width complains, and every complaint fails the test.
  for (const width of ['0', ''])
    for (const drawing of await drawings.all()) {
      await drawing.evaluate((one: HTMLElement, width) => (one.style.width = width), width);
      await bench.drawn();
    }
  await expect(page.locator('.string-scale .bar')).toBeVisible();
});

test('sizes by hand, by key and typed', onOnePage);

/** The plate's width on its way from the speaker's rim to the end of its knob, this long after the first frame. */
const grownTo = (seconds: number): number => 28 + (200 - 28) * Math.min(1, seconds / 6);

/** One frame of the driven clock grows the plate by half a millimetre. */
const A_FRAME = 0.6;

/** From now on the page's time stands still but for `page.clock.runFor`. */
async function holdTheClock(page: Page): Promise<void> {
  await page.clock.pauseAt((await page.evaluate(() => Date.now())) + 2000);
}

test.describe('by a clock that is driven', () => {
  test.use({ contextOptions: { reducedMotion: 'no-preference' } });

  test('G lets the plate grow in six seconds; any touch takes over; it can be put back; a mount slides in', async ({
    page,
    bench
  }) => {
    test.setTimeout(150_000);
    await page.clock.install();
    await bench.open();
    await bench.hear(2);
    await bench.settled();
    await holdTheClock(page);
    const width = () => number(bench, 'width');

    await test.step('from the rim to 200 mm in six seconds, frame by frame', async () => {
      await page.keyboard.press('g');
      await page.clock.runFor(32);
      await expect(page.getByText('The plate grows')).toBeVisible();
      const [first, seen] = [await width(), [] as number[]];
      expect(first).toBeLessThan(28 + 2 * A_FRAME);
      // Half a second of frames, then one frame each half second: where it stands hangs on the time alone.
      for (let passed = 500; passed < 6000; passed += 500) {
        await (passed === 500 ? page.clock.runFor(500) : page.clock.fastForward(500));
        await expect
          .poll(async () => Math.abs((await width()) - grownTo(passed / 1000)))
          .toBeLessThan(2 * A_FRAME);
        seen.push(await width());
      }
      expect([...seen].sort((a, b) => a - b)).toEqual(seen);
      await page.clock.fastForward(400);
      await expect(page.getByText('The plate grows')).toBeVisible();
      await page.clock.fastForward(150);
      await expect(page.getByText('The plate grows')).toHaveCount(0);
      await expect(bench.field('width')).toHaveValue('200');
      await expect(bench.field('length')).toHaveValue('200');
      await page.getByRole('button', { name: 'Put it back' }).click();
      await expect(bench.field('width')).toHaveValue('102');
      await expect(bench.field('length')).toHaveValue('152');
      await expect(page.getByRole('button', { name: 'Put it back' })).toHaveCount(0);
    });

    await test.step('any touch takes the growing plate over', async () => {
      await page.keyboard.press('g');
      await page.clock.runFor(32);
      await page.clock.fastForward(1000);
      await expect.poll(width).toBeGreaterThan(50);
      await page.mouse.click(5, 5);
      await expect(page.getByText('The plate grows')).toHaveCount(0);
      const stopped = await width();
      await page.clock.runFor(1000);
      expect(await width()).toBe(stopped);
      expect(stopped).toBeLessThan(60);
    });

    await test.step('and so does a key, which a chosen mount slides in by', async () => {
      await page.keyboard.press('g');
      await page.clock.runFor(32);
      await page.clock.fastForward(1000);
      await expect.poll(width).toBeGreaterThan(50);
      await page.keyboard.press('3');
      await expect(page.getByText('The plate grows')).toHaveCount(0);
      await expect(bench.stage.getByRole('heading')).toHaveText('Cab body');
      const wall = bench.stage.locator('.main .wall');
      const seen = new Set<string>();
      for (let i = 0; i < 6; i++) {
        await page.clock.runFor(96);
        seen.add((await wall.getAttribute('d'))!);
      }
      // Six looks within its six tenths of a second, another drawing each time.
      expect(seen.size).toBeGreaterThan(4);
      await page.clock.runFor(200);
      const still = await wall.getAttribute('d');
      await page.clock.runFor(1000);
      expect(await wall.getAttribute('d')).toBe(still);
      await page.getByRole('button', { name: 'Put it back' }).click();
      await expect(bench.stage.getByRole('heading')).toHaveText('Flat plate');
      await expect(bench.field('width')).toHaveValue('102');
    });

    await test.step('with reduced motion a mount stands there at once, and the plate grows in steps', async () => {
      await page.emulateMedia({ reducedMotion: 'reduce' });
      await page.keyboard.press('1');
      await page.clock.runFor(1000);
      await page.keyboard.press('2');
      await expect(bench.stage.getByRole('heading')).toHaveText('Flat plate');
      const wall = bench.stage.locator('.main .wall');
      const at = await wall.getAttribute('d');
      await page.clock.runFor(1000);
      expect(await wall.getAttribute('d')).toBe(at);
      await page.keyboard.press('g');
      await page.clock.runFor(32);
      for (let step = 0; step <= 6; step++) {
        const grown = Math.round(10 * grownTo(step)) / 10;
        await expect(bench.field('width')).toHaveValue(String(grown));
        await page.clock.runFor(500);
        if (step < 6) await expect(bench.field('width')).toHaveValue(String(grown));
        await page.clock.runFor(500);
      }
    });
  });
});
