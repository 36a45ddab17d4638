import type { BenchModel } from '../../src/lib/file/bench-file.js';
import { readBenchFile } from '../../src/lib/file/read-bench-file.js';
import { writeBenchFile } from '../../src/lib/file/write-bench-file.js';
import { usualSound } from '../../src/lib/sounds/roster.js';
import { axeFinds } from '../helpers/page-axe.js';
import { expect, test } from '../helpers/page-fixture.js';
import { OWN_BENCH } from '../helpers/page-own-bench.js';

/** In which the two phone types alone fit. */
const SMALL: BenchModel = {
  name: 'A tiny railcar',
  length: 0.019,
  width: 0.016,
  height: 0.008,
  above: 0.01,
  obstacles: [
    { name: 'weight', from: 0.001, length: 0.002, aside: 0, width: 0.002, above: 0, height: 0.001 }
  ],
  roof: [0, 0.019],
  openings: 0,
  sounds: [usualSound('puff')]
};

test.use({ left: writeBenchFile({ ...readBenchFile(OWN_BENCH), model: SMALL }) });

test('what fits is tried, says why the rest does not, is put on the shelf and taken back; an obstacle outside is told', async ({
  page,
  bench
}) => {
  // Every candidate is solved, heard and measured, one after the other on a slow core.
  test.setTimeout(180_000);
  await bench.open();
  await page.keyboard.press('f');
  const screen = page.getByRole('dialog', { name: 'Which one?' });
  await expect(screen).toBeVisible();
  await screen.getByRole('button', { name: 'try them all' }).click();
  await expect(screen.getByRole('status').first()).toHaveText(/\d+ were tried, of \d+ that fit/, {
    timeout: 60_000
  });
  const lines = screen.getByRole('list', { name: /^What fits, ranked by/ }).locator('> li');
  expect(await lines.count()).toBeGreaterThan(3);
  // what is below the head scrolls, the head stays
  expect(await screen.evaluate((dialog) => dialog.scrollHeight - dialog.clientHeight)).toBe(0);

  await screen.getByText('What does not fit, and why').click();
  await expect(screen.getByText('28 × 40 mm fits nowhere')).toBeVisible();
  await expect(
    screen.getByText(/it needs 28 mm across, and the body is 16 mm wide inside/).first()
  ).toBeVisible();
  expect(await axeFinds(page, {}, 'dialog[open]')).toEqual([]);

  await lines
    .first()
    .getByRole('button', { name: /on the shelf$/ })
    .click();
  await expect(lines.first().getByRole('status')).toHaveText('On the shelf as 5.');
  await screen.getByRole('button', { name: 'undo' }).click();
  await expect(lines.first().getByRole('status')).toHaveCount(0);

  const from = screen.getByRole('textbox', { name: 'from the left of weight' });
  await from.fill('18');
  await from.press('Enter');
  await expect(screen.getByRole('alert')).toHaveText(
    '“weight” reaches 1 mm out of the body beyond the right end'
  );
  await expect(screen.getByRole('button', { name: 'try them again' })).toBeDisabled();
  // nothing that was tried is lost
  expect(await lines.count()).toBeGreaterThan(3);
});
