import type { Page } from '@playwright/test';
import { axeFinds } from '../helpers/page-axe.js';
import { clickUntil } from '../helpers/page-click.js';
import { cases, expect, test } from '../helpers/page-fixture.js';
import { contrasts, wrongInProjector } from '../helpers/page-projector.js';
import { SMALL_BENCH } from '../helpers/page-own-bench.js';
import { standsStill } from '../helpers/page-still.js';

test.use({ contextOptions: { reducedMotion: 'no-preference' } });

const HALLS = [
  { width: 1920, height: 1080 },
  { width: 1280, height: 800 },
  { width: 1024, height: 768 }
];

/** How long the controls stay after the pointer has moved, and a little (screens/parts/hall/ViewControls.svelte). */
const LINGERING_MS = 3500;

interface Asked {
  fullscreen: number;
  left: number;
  locks: number;
  released: number;
}

/** A browser whose fullscreen and screen lock are watched. Runs in the page before anything else. */
function watchTheScreen(): void {
  const asked: Asked = { fullscreen: 0, left: 0, locks: 0, released: 0 };
  const has = { fullscreen: false, lock: true };
  Object.assign(window, { asked, has });
  let full: Element | null = null;
  const to = (element: Element | null): void => {
    full = element;
    document.dispatchEvent(new Event('fullscreenchange'));
  };
  Object.defineProperty(document, 'fullscreenElement', { get: () => full });
  document.exitFullscreen = async () => {
    asked.left++;
    to(null);
  };
  Element.prototype.requestFullscreen = async function () {
    asked.fullscreen++;
    if (!has.fullscreen) throw new TypeError('fullscreen refused');
    to(this);
  };
  const wakeLock = {
    request: async () => {
      asked.locks++;
      if (!has.lock) throw new DOMException('lock refused', 'NotAllowedError');
      const sentinel = Object.assign(new EventTarget(), {
        released: false,
        release: async () => {
          if (!sentinel.released) asked.released++;
          sentinel.released = true;
        }
      });
      Object.assign(window, { sentinel });
      return sentinel;
    }
  };
  Object.defineProperty(navigator, 'wakeLock', { value: wakeLock });
}

/** From now on the browser has a fullscreen and a screen lock to give, or not; nothing has been asked of it. */
function standIn(page: Page, { fullscreen = false, lock = true } = {}): Promise<void> {
  return page.evaluate(
    (has) => {
      const lab = window as unknown as { asked: Asked; has: typeof has };
      Object.assign(lab.has, has);
      Object.assign(lab.asked, { fullscreen: 0, left: 0, locks: 0, released: 0 });
    },
    { fullscreen, lock }
  );
}

const asked = (page: Page): Promise<Asked> =>
  page.evaluate(() => (window as unknown as { asked: Asked }).asked);

const view = (page: Page) => page.getByRole('main', { name: 'Projector view' });

/** Waits until the view is there, which is fetched when it is asked for first, and a mount that has been chosen has slid in. */
async function still(page: Page): Promise<void> {
  await expect(view(page)).toBeVisible();
  await standsStill(page, '.projector .drawing');
}

/** Nothing is wrong in any of the halls. */
async function fitsEverywhere(page: Page, what: string): Promise<void> {
  for (const size of HALLS) {
    await page.setViewportSize(size);
    await still(page);
    expect(await wrongInProjector(page), `${what}, ${size.width} × ${size.height}`).toEqual([]);
  }
}

test.beforeEach(async ({ page }) => {
  await page.addInitScript(watchTheScreen);
});

const { it: listed, onOnePage } = cases();

/** A case in a window of the usual size, where what is chosen stands there at once. */
const it: typeof listed = (title, act) =>
  listed(title, async (all) => {
    await all.page.setViewportSize({ width: 1280, height: 720 });
    await all.page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
    await standIn(all.page);
    await act(all);
  });

it('every mount fills the window, nothing cut off or overlapping, all large enough', async ({ page }) => {
  await page.keyboard.press('p');
  for (const numeral of [1, 2, 3, 4]) {
    await page.keyboard.press(`Digit${numeral}`);
    await fitsEverywhere(page, `mount ${numeral}`);
    expect(await page.locator('.projector path[data-curve]').count()).toBe(numeral === 1 ? 1 : 2);
  }
  // The largest plate there is.
  await page.keyboard.press('Digit2');
  for (let i = 0; i < 11; i++) await page.keyboard.press('Shift+ArrowUp');
  await fitsEverywhere(page, 'a plate of 200 mm');
});

it('long names, equal loudness and what the browser refuses fit, too', async ({ page, bench }) => {
  await standIn(page, { lock: false });
  const longest = 'The full-width cab body of no. 41 with its fuel tank cut open and a grille above';
  await page.getByText('name, notes, place').click();
  for (const [numeral, ending] of [
    [3, 'above'],
    [4, 'below']
  ] as const) {
    await bench.hear(numeral);
    const name = page.getByRole('textbox', { name: 'name', exact: true });
    await name.fill(longest.replace('above', ending));
    await name.press('Enter');
    await name.blur();
  }
  await page.keyboard.press('l');
  await page.keyboard.press('p');
  await view(page).getByRole('button', { name: 'fullscreen' }).click();
  await expect(view(page).getByRole('status')).toBeVisible();
  await fitsEverywhere(page, 'the long name is heard');
  await page.keyboard.press('Escape');
  await page.getByRole('combobox', { name: /levels against/ }).selectOption('2');
  await page.getByRole('combobox', { name: /levels against/ }).blur();
  await page.keyboard.press('p');
  await expect(view(page)).toContainText('played equally loud now');
  for (const numeral of [2, 4]) {
    await page.keyboard.press(`Digit${numeral}`);
    await fitsEverywhere(page, `a long name is measured against, ${numeral} heard`);
  }
});

it('the wave solution fits, too: its curves with their names, a tone and a puff', async ({ page, bench }) => {
  await bench.afresh(SMALL_BENCH);
  await page.keyboard.press('p');
  await page.keyboard.press('w');
  for (const numeral of [1, 2, 3, 4]) {
    await page.keyboard.press(`Digit${numeral}`);
    await expect(view(page).getByText('what you hear: wave solution')).toBeVisible({ timeout: 60_000 });
    await expect(view(page).getByText('estimated')).toBeVisible({ timeout: 60_000 });
    // Of a shell the hump is the ring.
    await expect(view(page).getByText('½ wave late')).toHaveCount(numeral < 3 ? 1 : 0);
    await expect(view(page).getByText('the shell rings')).toHaveCount(numeral === 3 ? 1 : 0);
    await expect(view(page).getByText(/rule of thumb, good to \d/)).toBeVisible();
    await expect(view(page).getByText('front without the back')).toBeVisible();
    await fitsEverywhere(page, `curves of ${numeral}`);
  }
  // What moves by itself has captions of its own.
  await page.emulateMedia({ reducedMotion: 'no-preference' });
  await page.keyboard.press('a');
  for (const numeral of [3, 4]) {
    await page.keyboard.press(`Digit${numeral}`);
    await expect(view(page).getByText(numeral === 3 ? 'less cancels' : 'nothing cancels')).toBeVisible();
    await expect(view(page).getByText(/dotted: free air/i)).toBeVisible({ timeout: 60_000 });
    // The heard mount, and in the corner the one that it is held against.
    await expect(view(page).locator('canvas')).toHaveCount(2, { timeout: 60_000 });
    await fitsEverywhere(page, `a tone, ${numeral}`);
  }
  await page.keyboard.press('Digit3');
  await page.keyboard.press('a');
  await expect(view(page).getByRole('listitem')).toHaveCount(4, { timeout: 60_000 });
  await expect(view(page).locator('[aria-current=step]')).toContainText('swings on');
  await fitsEverywhere(page, 'a puff');
});

it('a mount that cannot be built says so in words', async ({ page, bench }) => {
  await bench.hear(3);
  await bench.giveSpeaker('round-50');
  await page.keyboard.press('p');
  await expect(view(page).locator('.problem')).toContainText('does not fit');
  await expect(view(page)).toContainText('it cannot be built so');
  await fitsEverywhere(page, 'it cannot be built');
});

// Colours do not hang on the size.
for (const inverted of [false, true])
  it(`contrast of 7:1 throughout${inverted ? ', inverted' : ''}`, async ({ page }) => {
    await page.keyboard.press('p');
    if (inverted) await page.keyboard.press('i');
    for (const numeral of [1, 2, 3, 4]) {
      await page.keyboard.press(`Digit${numeral}`);
      await still(page);
      const all = await contrasts(page);
      expect(all.length).toBeGreaterThan(15);
      expect(all.filter(({ ratio }) => ratio < 7)).toEqual([]);
    }
    await page.mouse.move(300, 300);
    expect(await axeFinds(page, { rules: { 'color-contrast-enhanced': { enabled: true } } })).toEqual([]);
    if (inverted) await page.keyboard.press('i');
  });

it('near-white on a dark system, too; I inverts and back', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'dark', reducedMotion: 'reduce' });
  await page.keyboard.press('p');
  await expect(view(page)).toHaveCSS('background-color', 'rgb(253, 252, 249)');
  await page.keyboard.press('i');
  await expect(view(page)).toHaveCSS('background-color', 'rgb(13, 17, 22)');
  await view(page).getByRole('button', { name: 'invert' }).click();
  await expect(view(page)).toHaveCSS('background-color', 'rgb(253, 252, 249)');
});

it('all keys keep working, and the bench behind is as it was left', async ({ page, bench }) => {
  const button = page.getByRole('button', { name: 'projector view' });
  await clickUntil(button, view(page));
  const heading = view(page).getByRole('heading', { level: 1 });
  const names = ['Free air', 'Flat plate', 'Cab body', 'Closed box'];
  for (const numeral of [2, 3, 4, 1]) {
    await page.keyboard.press(`Digit${numeral}`);
    await expect(heading).toContainText(names[numeral - 1]);
  }
  for (const name of ['Flat plate', 'Cab body']) {
    await page.keyboard.press('PageDown');
    await expect(heading).toContainText(name);
  }
  await page.keyboard.press('PageUp');
  await expect(heading).toContainText('Flat plate');
  await expect(view(page)).toContainText(/\d+ dB louder than free air/);
  await still(page);
  const wall = view(page).locator('.wall');
  const [before, curve] = [await wall.getAttribute('d'), view(page).locator('path[data-curve="1"]')];
  const drawn = await curve.last().getAttribute('d');
  await page.keyboard.press('Shift+ArrowRight');
  await expect(wall).not.toHaveAttribute('d', before!);
  await expect(curve.last()).not.toHaveAttribute('d', drawn!);
  await page.keyboard.press('.');
  await expect(view(page)).toContainText('silenced');
  await page.keyboard.press('.');
  await page.keyboard.press('l');
  await expect(view(page)).toContainText('equally loud');
  await page.keyboard.press('l');
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'I am ready: play' }).click();
  await expect(page.locator('button.play')).toHaveAttribute('aria-label', 'Stop');
  await page.keyboard.press('Escape');
  await expect(view(page)).toHaveCount(0);
  await expect(button).toBeFocused();
  await expect(bench.field('width')).toHaveValue('112');
});

it('refused fullscreen and a refused lock do no harm, and are told only to one who asks', async ({
  page
}) => {
  await standIn(page, { lock: false });
  await page.keyboard.press('p');
  await expect.poll(async () => (await asked(page)).fullscreen).toBe(1);
  await expect(view(page)).toBeVisible();
  await expect(view(page).getByRole('status')).toHaveCount(0);
  await view(page).getByRole('button', { name: 'fullscreen' }).click();
  await expect(view(page).getByRole('status')).toHaveText(
    'No fullscreen here: the view fills the window. The screen may go dark by itself.'
  );
  await still(page);
  expect(await wrongInProjector(page)).toEqual([]);
  await page.keyboard.press('p');
  await expect(view(page)).toHaveCount(0);
});

it('leaving fullscreen does not leave the view; leaving the view leaves fullscreen', async ({ page }) => {
  await standIn(page, { fullscreen: true });
  await page.keyboard.press('p');
  const button = view(page).getByRole('button', { name: 'fullscreen' });
  await expect(button).toHaveAttribute('aria-pressed', 'true');
  await page.evaluate(() => document.exitFullscreen());
  await expect(button).toHaveAttribute('aria-pressed', 'false');
  await expect(view(page)).toBeVisible();
  await button.click();
  await expect(button).toHaveAttribute('aria-pressed', 'true');
  await view(page).getByRole('button', { name: 'leave' }).click();
  await expect(view(page)).toHaveCount(0);
  expect(await page.evaluate(() => document.fullscreenElement)).toBeNull();
});

it('the screen is kept awake while the view is shown, again after the page was hidden, and let go', async ({
  page
}) => {
  expect((await asked(page)).locks).toBe(0);
  await page.keyboard.press('p');
  await expect.poll(async () => (await asked(page)).locks).toBe(1);
  // The browser takes the lock from a hidden page.
  await page.evaluate(() => {
    (window as unknown as { sentinel: { released: boolean } }).sentinel.released = true;
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await expect.poll(async () => (await asked(page)).locks).toBe(2);
  await page.keyboard.press('Escape');
  await expect.poll(async () => (await asked(page)).released).toBe(1);
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  expect((await asked(page)).locks).toBe(2);
});

test('the projector view', onOnePage);

test('by a clock that is driven: the controls go and come, G is seen to grow the plate, a mount slides in', async ({
  page,
  bench
}) => {
  test.setTimeout(150_000);
  await page.clock.install();
  await bench.open();
  await page.keyboard.press('p');
  await test.step('the controls come with the pointer, go again, and can be reached by keyboard', async () => {
    const controls = view(page).getByRole('group', { name: 'The view' });
    await page.clock.fastForward(LINGERING_MS);
    await expect(controls).toHaveCSS('opacity', '0');
    await page.mouse.move(200, 200);
    await expect(controls).toHaveCSS('opacity', '1');
    await page.clock.fastForward(LINGERING_MS);
    await expect(controls).toHaveCSS('opacity', '0');
    await page.keyboard.press('Tab');
    await expect(controls.getByRole('button', { name: 'leave' })).toBeFocused();
    await expect(controls).toHaveCSS('opacity', '1');
    await page.keyboard.press('Space');
    await expect(view(page)).toHaveCount(0);
    await expect(page.getByRole('dialog')).toHaveCount(0);
    await expect(bench.playButton).toHaveAttribute('aria-label', 'Play');
  });

  await page.keyboard.press('p');
  await expect(view(page)).toBeVisible();
  await page.clock.pauseAt((await page.evaluate(() => Date.now())) + 2000);
  const wall = view(page).locator('.wall');
  const width = async () => (await wall.boundingBox())!.width;

  await test.step('G is seen to grow the plate; to look at it the other way round does not stop it', async () => {
    await page.keyboard.press('Shift+KeyG');
    await page.clock.runFor(32);
    const widths: number[] = [];
    for (let i = 0; i < 6; i++) {
      widths.push(await width());
      // Every frame of one third of a second, then one frame for each.
      await (i === 0 ? page.clock.runFor(350) : page.clock.fastForward(350));
    }
    for (let i = 1; i < widths.length; i++) expect(widths[i], `look ${i}`).toBeGreaterThan(widths[i - 1]);
    expect(widths.at(-1)! / widths[0]).toBeGreaterThan(1.4);
    const before = await width();
    await page.keyboard.press('i');
    await page.clock.fastForward(350);
    expect(await width()).toBeGreaterThan(before);
  });

  await test.step('a chosen mount stops it and slides in', async () => {
    await page.keyboard.press('Digit3');
    const seen = new Set<string>();
    for (let i = 0; i < 6; i++) {
      await page.clock.runFor(96);
      seen.add((await wall.getAttribute('d'))!);
    }
    expect(seen.size).toBeGreaterThan(4);
    await page.clock.runFor(200);
    const at = await wall.getAttribute('d');
    await page.clock.runFor(1000);
    expect(await wall.getAttribute('d')).toBe(at);
  });

  await test.step('with reduced motion a mount stands there at once', async () => {
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await page.keyboard.press('Digit2');
    await expect(view(page).getByRole('heading', { level: 1 })).toContainText('Flat plate');
    const at = await wall.getAttribute('d');
    await page.clock.runFor(1000);
    expect(await wall.getAttribute('d')).toBe(at);
  });
});

test('nothing behind the view can be reached; #projector enters it', async ({ page, bench }) => {
  await page.goto('./#projector');
  await expect(view(page)).toBeVisible();
  await expect.poll(async () => (await asked(page)).locks).toBe(1);
  expect((await asked(page)).fullscreen).toBe(0);
  for (let i = 0; i < 6; i++) {
    await page.keyboard.press('Tab');
    expect(
      await page.evaluate(() => document.activeElement?.closest('.workbench') === null),
      'the focus is not behind the view'
    ).toBe(true);
  }
  await page.keyboard.press('Escape');
  await expect(bench.stage).toBeVisible();
});
