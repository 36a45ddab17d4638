import type { Page } from '@playwright/test';
import { axeFinds, axeFindsOfColours, OF_COLOURS } from '../helpers/page-axe.js';
import type { BenchPage } from '../helpers/page-bench.js';
import { clickUntil } from '../helpers/page-click.js';
import { expect, test } from '../helpers/page-fixture.js';
import { OWN_BENCH, SMALL_BENCH } from '../helpers/page-own-bench.js';
import { overlaps, smallTargets } from '../helpers/page-overlaps.js';

const SIZES = [
  { name: 'a desk', width: 1440, height: 900, touch: false },
  { name: 'a tablet', width: 820, height: 1180, touch: true },
  { name: 'a phone', width: 390, height: 844, touch: true }
];

/** States that show no colour that others do not show as well. */
const LIKE_OTHERS = ['mount 2 heard', 'mount 3 heard', 'the table open', 'an error at a size'];

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What can differ from one size to another. */
const OF_SIZES = ['target-size', 'scrollable-region-focusable', 'meta-viewport'];

/** States in which a phone or a tablet shows what a desk does not. */
const OF_TOUCH = ['at the start', 'everything unfolded'];

/** Everything is asked on a desk in light. */
async function axe(page: Page, state: string, asked: 'all' | 'colours' | 'sizes'): Promise<void> {
  const said: string[] = [];
  if (asked !== 'colours')
    said.push(
      ...(await axeFinds(page, {
        runOnly: asked === 'all' ? { type: 'tag', values: RULES } : { type: 'rule', values: OF_SIZES },
        rules: asked === 'all' ? Object.fromEntries(OF_COLOURS.map((rule) => [rule, { enabled: false }])) : {}
      }))
    );
  if (asked !== 'sizes') said.push(...(await axeFindsOfColours(page)));
  expect.soft(said.map((one) => `${state}: ${one}`)).toEqual([]);
}

async function isDesk(page: Page): Promise<boolean> {
  return (await page.evaluate(() => innerWidth)) >= 1440;
}

/** At a desk the first screen holds the whole picture of the response with its axis, whichever mount is heard. */
async function wholePicture(page: Page, state: string): Promise<void> {
  if (!(await isDesk(page))) return;
  await page.evaluate(() => scrollTo(0, 0));
  const { y, height } = (await page.locator('.response-picture svg').first().boundingBox())!;
  expect.soft(y + height, `${state}: the picture’s lower end`).toBeLessThanOrEqual(900);
}

/** Every state in which the page can stand, one after the other; each is looked at when it has come to rest. */
async function everyState(
  page: Page,
  bench: BenchPage,
  look: (state: string) => Promise<void>,
  phone: boolean
): Promise<void> {
  await look('at the start');
  await wholePicture(page, 'at the start');
  for (const numeral of [2, 3, 4]) {
    await bench.hear(numeral);
    await bench.settled();
    await look(`mount ${numeral} heard`);
    await wholePicture(page, `mount ${numeral} by the rule of thumb`);
  }
  if (await isDesk(page)) {
    await page.keyboard.press('w');
    for (const numeral of [1, 3, 4, 2]) {
      await bench.hear(numeral);
      await bench.settled();
      await wholePicture(page, `mount ${numeral} by the wave solution`);
    }
    await page.keyboard.press('w');
  }
  await bench.hear(2);
  await bench.settled();
  if (phone) {
    for (const summary of await page.locator('summary').all()) await summary.click();
    await look('everything unfolded');
  } else {
    const left = page.getByRole('region', { name: /^What is left of the/ });
    await left.getByText('the figures as a table').click();
    await look('the table open');
    await left.getByText('the figures as a table').click();
    const sound = page.getByRole('region', { name: 'The sound itself' });
    for (const summary of await sound.locator('summary').all()) await summary.click();
    await look('the sound unfolded');
    for (const summary of await sound.locator('summary').all()) await summary.click();
  }
  await bench.openSpeaker();
  await look('the speaker’s drawing');
  await bench.speaker.getByRole('tab', { name: 'maker’s sheet' }).click();
  await bench.typeFigure(/^resonance/, '410');
  await bench.typeFigure(/^moving mass/, '0.55');
  await bench.typeFigure(/^compliance/, '0.38');
  await expect(bench.speaker.getByText('39 % apart')).toBeVisible();
  await look('a maker’s sheet that contradicts itself');
  await bench.speaker.getByRole('tab', { name: 'measured at home' }).click();
  await look('the speaker measured at home');
  await bench.speaker.getByRole('tab', { name: 'all speakers' }).click();
  await look('all speakers');
  await bench.escape();
  await page.getByRole('button', { name: 'another sound' }).click();
  await expect(page.getByRole('dialog', { name: 'The sounds there are' })).toBeVisible();
  await look('the drawer of sounds');
  await page.keyboard.press('Escape');
  const width = await bench.field('width').inputValue();
  await bench.type('width', '0');
  await look('an error at a size');
  await bench.type('width', width);
  await bench.hear(4);
  await bench.giveSpeaker('round-50');
  await look('a mount that cannot be built');
  await bench.giveSpeaker('oval');
  await bench.hear(2);
  await bench.settled();
  await bench.picker.setInputFiles({
    name: 'words.wav',
    mimeType: 'audio/wav',
    buffer: Buffer.from('words')
  });
  await expect(bench.recordingProblem).toBeVisible();
  await look('a recording refused');
  await page.keyboard.press('w');
  const around = page.getByRole('region', { name: 'The air around it' });
  await page.getByRole('radio', { name: 'a distance' }).check();
  await expect(page.locator('.model .status')).toContainText('solved in full', { timeout: 60_000 });
  await around.scrollIntoViewIfNeeded();
  await expect(around.getByRole('img', { name: /sound pressure/ })).toBeVisible({ timeout: 60_000 });
  await expect(around.getByText('being worked out')).toHaveCount(0);
  await look('the waves in the air');
}

for (const { name, width, height, touch } of SIZES)
  test.describe(`on ${name}, ${width} × ${height}`, () => {
    test.use({
      viewport: { width, height },
      hasTouch: touch,
      isMobile: touch,
      // Which sizes its mounts have changes nothing of what touch differs in, and the waves around small ones are there sooner.
      left: touch ? SMALL_BENCH : OWN_BENCH,
      contextOptions: { reducedMotion: 'reduce' }
    });
    const phone = width < 701;

    test('nothing overlaps, nothing is cut off, axe finds nothing in light and in dark; targets are large', async ({
      page,
      bench
    }) => {
      test.setTimeout(300_000);
      /** What is where does not hang on the colours: it is looked at in light. */
      const look = async (state: string, asked: 'all' | 'sizes' | 'colours', dark: boolean) => {
        expect.soft((await overlaps(page)).map((one) => `${state}: ${one}`)).toEqual([]);
        await axe(page, state, asked);
        if (!dark) return;
        await page.emulateMedia({ colorScheme: 'dark' });
        await axe(page, `${state}, dark`, 'colours');
        await page.emulateMedia({ colorScheme: 'light' });
      };
      const asked = touch ? 'sizes' : 'all';
      // The dark colours of a tablet are those of a desk, and a phone's are but for what only a phone has.
      const dark = name !== 'a tablet';
      await bench.open();
      await bench.measured();
      await everyState(
        page,
        bench,
        async (state) => {
          const ofTouch = touch && OF_TOUCH.includes(state);
          await look(
            state,
            ofTouch ? 'all' : asked,
            dark && !LIKE_OTHERS.includes(state) && (!touch || ofTouch)
          );
        },
        phone
      );

      await test.step('dialogs and answers', async () => {
        await bench.afresh();
        const keys = page.getByRole('dialog', { name: 'All keys' });
        await clickUntil(page.getByRole('button', { name: '? all keys' }), keys);
        await look('the list of keys', asked, dark);
        await bench.escape();
        await bench.playButton.click();
        await expect(page.getByRole('dialog', { name: 'Put headphones on' })).toBeVisible();
        await look('the ear check', asked, dark);
        await bench.escape();
        await bench.hear(2);
        for (const figure of await page.locator('main button.figure').all()) {
          if (!(await figure.isVisible())) continue;
          await figure.click();
          const note = page.locator('[popover]:popover-open');
          await expect(note).toBeVisible();
          const box = (await note.boundingBox())!;
          expect.soft(box.x).toBeGreaterThanOrEqual(0);
          expect.soft(box.y).toBeGreaterThanOrEqual(0);
          expect.soft(box.x + box.width).toBeLessThanOrEqual(width);
          expect.soft(box.y + box.height, (await note.innerText()).slice(0, 60)).toBeLessThanOrEqual(height);
          await bench.escape();
        }
        await page.locator('main button.figure:visible').first().click();
        await axe(page, 'an answer open', asked);
        if (dark) {
          await page.emulateMedia({ colorScheme: 'dark' });
          await axe(page, 'an answer open, dark', 'colours');
          await page.emulateMedia({ colorScheme: 'light' });
        }
        await page.keyboard.press('Escape');
      });

      await test.step('targets are large enough', async () => {
        await bench.afresh();
        await bench.hear(2);
        await bench.settled();
        if (phone) for (const summary of await page.locator('summary').all()) await summary.click();
        const all =
          'button:not(.link, .figure), select, input:not([hidden]), summary, [role="slider"], .handle';
        expect.soft(await smallTargets(page, 24, all)).toEqual([]);
        if (touch) {
          const main = '.play, button.disc, .cord, .knob button, dialog button';
          expect.soft(await smallTargets(page, 44, main)).toEqual([]);
        }
      });
    });
  });

test('what lies badly on a page is found', async ({ page }) => {
  await page.setContent(`
    <p style="position: absolute; left: 40px; top: 40px">lies here</p>
    <p style="position: absolute; left: 45px; top: 44px">lies there</p>
    <p style="position: absolute; left: 40px; top: 200px; width: 30px; overflow: hidden; white-space: nowrap">is cut off here</p>
    <p style="position: absolute; left: -20px; top: 300px">leaves it</p>
    <p style="position: absolute; left: 40px; top: 400px">lies well</p>`);
  expect(await overlaps(page)).toEqual([
    '"is cut off here" is cut off',
    '"leaves it" leaves the window',
    '"lies here" lies on "lies there"'
  ]);
});

test.describe('for a large type size', () => {
  test.use({ viewport: { width: 720, height: 450 }, contextOptions: { reducedMotion: 'reduce' } });

  // A window of 1440 pixels at 200 % (WCAG 1.4.4) has 720 of its own.
  test('twice as large, nothing is lost', async ({ page, bench }) => {
    await bench.open();
    for (const numeral of [1, 2, 3, 4]) {
      await bench.hear(numeral);
      await bench.settled();
      expect.soft((await overlaps(page)).map((one) => `mount ${numeral}: ${one}`)).toEqual([]);
    }
  });
});
