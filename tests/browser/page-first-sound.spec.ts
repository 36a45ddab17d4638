import { demoMount, engineLoop, levelInNode } from '../helpers/page-level.js';
import { cases, expect, test } from '../helpers/page-fixture.js';
import { weighFirstSound } from '../helpers/page-weight.js';

/** Notes by the page's own clock when the sound begins and when it is said what to press. */
function watchTheHint(): void {
  let [began, said] = [NaN, NaN];
  new MutationObserver(() => {
    if (Number.isNaN(began) && document.querySelector('button.play[aria-label="Stop"]'))
      began = performance.now();
    if (Number.isNaN(said) && document.querySelector('.say')?.textContent.includes('Press 2'))
      said = performance.now();
  }).observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
  Object.assign(window, { heardFor: () => said - began });
}

interface Noted {
  /** Whether the sound worker was begun before there was a body of the page. */
  begunInHead?: boolean;
  /** What it was asked until the first sound was there, in this order. */
  questions: string[];
}

/** Notes when the sound worker is begun and what it is asked. Runs in the page before anything else. */
function watchTheWorker(): void {
  const noted: Noted = { questions: [] };
  Object.assign(window, { noted });
  const { postMessage } = Worker.prototype;
  Worker.prototype.postMessage = function (this: Worker, message: unknown, ...more: never[]) {
    noted.begunInHead ??= document.body === null;
    const { question } = message as { question?: { kind: string } };
    if (question && !document.documentElement.classList.contains('seen')) noted.questions.push(question.kind);
    postMessage.call(this, message, ...more);
  };
}

// The engine of the demo bench.
test.use({ returning: false });

const { it, onOnePage } = cases();

it('the levels on the shelf are those of the pure functions, by the rule of thumb', async ({
  page,
  bench
}) => {
  await page.getByRole('radio', { name: 'rule of thumb' }).check();
  // The waves may have been solved and measured before.
  await bench.measured();
  const engine = engineLoop();
  for (const numeral of [2, 3, 4]) {
    const exact = levelInNode(demoMount(numeral), engine);
    const written = (await bench.level(numeral))!;
    // Written to whole decibels; 0.3 dB for another rounding of the same filter.
    expect(Math.abs(written - exact), `stand ${numeral}: ${written} on screen, ${exact} here`).toBeLessThan(
      0.8
    );
  }
});

it('"not now" plays nothing and asks again', async ({ page, bench }) => {
  await bench.playButton.click();
  await page.getByRole('button', { name: 'Not now' }).click();
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Play');
  await bench.playButton.click();
  await expect(page.getByRole('dialog', { name: 'Put headphones on' })).toBeVisible();
  await bench.escape();
});

it('the first ten seconds: ear check, free air, the hint, the plate', async ({ page, bench }) => {
  await expect(bench.stage.getByRole('heading')).toHaveText('Free air');
  await page.keyboard.press('Space');
  const check = page.getByRole('dialog', { name: 'Put headphones on' });
  await expect(check).toBeVisible();
  const pair = check.getByRole('button', { name: 'Play a low and a high tone' });
  await pair.click();
  await expect(check.getByRole('button', { name: 'low … high …' })).toBeDisabled();
  await expect(pair).toBeEnabled({ timeout: 10_000 });
  await expect(check.getByRole('alert')).toHaveCount(0);
  await page.evaluate(watchTheHint);
  await check.getByRole('button', { name: 'I am ready: play' }).click();
  await expect(check).toBeHidden();
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');

  await expect(bench.spoken).toHaveText('Free air, heard');
  const hint = page.getByText('This is the speaker alone: thin. Press 2 and hear it in a plate.');
  await expect(hint).toBeVisible();
  // The thin sound is heard for three seconds before anything is asked.
  expect(
    await page.evaluate(() => (window as unknown as { heardFor: () => number }).heardFor())
  ).toBeGreaterThan(2500);

  await page.keyboard.press('2');
  await expect(bench.stage.getByRole('heading')).toHaveText('Flat plate');
  await expect(bench.stage).toContainText('you hear this one');
  await expect(bench.stand(2)).toHaveClass(/heard/);
  await expect(bench.stage.locator('.level')).toContainText('dB louder');
  const written = (await bench.level(2))!;
  await expect(bench.spoken).toHaveText(`Flat plate, heard, ${written} dB louder`);
  await expect(hint).toHaveCount(0);
  await expect(page.getByText('The sound from behind now has 102 mm to go round.')).toBeVisible();
  await expect(page.getByText('grow from the speaker’s rim')).toBeVisible();
});

it('the sound stops and starts again, the ear check is asked once', async ({ page, bench }) => {
  await bench.play();
  await page.keyboard.press('Space');
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Play');
  await bench.playButton.click();
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await bench.playButton.click();
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Play');
});

it('the horn blows while it is held, by mouse and by key, and only while there is sound', async ({
  page,
  bench
}) => {
  const cord = page.getByRole('button', { name: 'Horn: hold to blow' });
  await expect(cord).toBeDisabled();
  await bench.play();
  await expect(cord).toBeEnabled();
  await cord.hover();
  await page.mouse.down();
  await expect(cord).toHaveAttribute('aria-pressed', 'true');
  await page.mouse.up();
  await expect(cord).toHaveAttribute('aria-pressed', 'false');
  await cord.focus();
  await page.keyboard.down('Space');
  await expect(cord).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.up('Space');
  await expect(cord).toHaveAttribute('aria-pressed', 'false');
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
  // A mouse that is let go elsewhere lets go of the cord.
  await cord.hover();
  await page.mouse.down();
  await page.mouse.move(700, 700);
  await page.mouse.up();
  await expect(cord).toHaveAttribute('aria-pressed', 'false');
});

it('the throttle follows keys, buttons and the mouse, and stops at its ends', async ({ page, bench }) => {
  const throttle = page.getByRole('slider', { name: 'Throttle' });
  const words = page.locator('.throttle .words');
  await throttle.focus();
  await page.keyboard.press('ArrowUp');
  await expect(throttle).toHaveAttribute('aria-valuenow', '5');
  await page.keyboard.press('ArrowLeft');
  await expect(throttle).toHaveAttribute('aria-valuenow', '4');
  await page.keyboard.press('End');
  await expect(words).toContainText('notch 8');
  await expect(page.getByRole('button', { name: 'Throttle up' })).toBeDisabled();
  await page.keyboard.press('ArrowRight');
  await expect(throttle).toHaveAttribute('aria-valuenow', '8');
  const fast = await words.locator('b').innerText();
  await page.keyboard.press('Home');
  await expect(words).toContainText('idle');
  await expect(page.getByRole('button', { name: 'Throttle down' })).toBeDisabled();
  expect(Number.parseInt(fast)).toBeGreaterThan(Number.parseInt(await words.locator('b').innerText()));
  await page.getByRole('button', { name: 'Throttle up' }).click();
  await expect(throttle).toHaveAttribute('aria-valuenow', '1');
  const box = (await throttle.boundingBox())!;
  await page.mouse.click(box.x + box.width - 8, box.y + 50);
  await expect(throttle).toHaveAttribute('aria-valuenow', '8');
  await expect(bench.stage.getByRole('heading')).toHaveText('Free air');
});

it('another notch is another sound: the levels follow it', async ({ page, bench }) => {
  const throttle = page.getByRole('slider', { name: 'Throttle' });
  await throttle.focus();
  await page.keyboard.press('Home');
  const exact = levelInNode(demoMount(2), engineLoop(0));
  await expect
    .poll(async () => Math.abs((await bench.level(2))! - exact), { message: `${exact} dB at idle` })
    .toBeLessThan(0.8);
});

it('the volume is turned by keys; its arrows turn no size', async ({ page, bench }) => {
  await bench.play();
  await bench.hear(2);
  const volume = page.getByRole('slider', { name: 'volume' });
  await volume.focus();
  await page.keyboard.press('ArrowRight');
  await expect(volume).toHaveValue('0.51');
  await page.keyboard.press('Home');
  await expect(volume).toHaveValue('0');
  await expect(bench.field('width')).toHaveValue('102');
});

it('levels can be taken against another mount', async ({ page, bench }) => {
  await bench.measured();
  const before = (await bench.level(2))!;
  expect(before).not.toBe(0);
  await page.getByRole('combobox', { name: /levels against/ }).selectOption('flat plate');
  await expect(bench.stand(2)).toContainText('to compare with');
  await expect.poll(() => bench.level(1)).toBe(-before);
});

test('the first sound, of a page that has asked for 250 kB at most', async ({ page, bench }) => {
  const weighed = await weighFirstSound(page);
  await page.addInitScript(watchTheWorker);
  await onOnePage({ page, bench });
  // It is begun before the page's own scripts, in one worker, and what its levels need not comes after them.
  const noted = await page.evaluate(() => (window as unknown as { noted: Noted }).noted);
  expect(noted).toEqual({ begunInHead: true, questions: ['prepare', 'sound', 'keep', 'loudnessThrough'] });
  const { names, kB } = await weighed();
  expect(names.filter((name) => name.includes('lab.worker')).length).toBe(1);
  // Both that make the sound and play it are among them, and no typeface.
  expect(names.join()).toMatch(/lab\.worker/);
  expect(names.join()).not.toMatch(/woff2|waves\.worker/);
  expect(kB).toBeLessThan(250);
  expect(kB).toBeGreaterThan(150);
});
