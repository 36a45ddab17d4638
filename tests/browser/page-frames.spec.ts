import { expect, test } from '../helpers/page-fixture.js';
import { isDrawn } from '../helpers/page-frames.js';

test('a page that the browser has stopped drawing is told from one that hangs by itself', async ({
  page
}) => {
  expect(await isDrawn(page, 20_000)).toBe(true);
  await page.evaluate(() => void (window.requestAnimationFrame = () => 0));
  // It answers in this time on any machine.
  expect(await isDrawn(page, 4000)).toBe(false);
  const busy = page.evaluate(() => {
    for (const end = performance.now() + 1500; performance.now() < end;);
  });
  expect(await isDrawn(page, 500)).toBe(true);
  await busy;
});
