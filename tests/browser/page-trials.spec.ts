import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { readBenchFile } from '../../src/lib/file/read-bench-file.js';
import { writeBenchFile } from '../../src/lib/file/write-bench-file.js';
import { integratedLoudness } from '../../src/lib/listening/loudness.js';
import { usualSound } from '../../src/lib/sounds/roster.js';
import { axeFinds } from '../helpers/page-axe.js';
import { tapTheDevice } from '../helpers/page-device.js';
import { everything } from '../helpers/page-everything.js';
import { expect, test } from '../helpers/page-fixture.js';
import { OWN_BENCH } from '../helpers/page-own-bench.js';

const bench = readBenchFile(OWN_BENCH);
const NAMES = bench.setups.map(({ name }) => name);

// A sound that is as loud at any time, so that a part of it has the loudness of the whole.
test.use({ left: writeBenchFile({ ...bench, sound: usualSound('pinkNoise') }) });

/** Loudness of what went to the device over a whole turn of the noise, eight times 32 768 samples, in LUFS. */
async function loudness(page: Page): Promise<number> {
  const samples = await page.evaluate(async () => {
    const { taps } = window as unknown as { taps: AnalyserNode[] };
    const [tap] = taps;
    const all: number[] = [];
    const part = new Float32Array(tap.fftSize);
    // The first part ends when what was before it has gone.
    let due = tap.context.currentTime + 0.3;
    for (let i = 0; i < 8; i++) {
      due += tap.fftSize / tap.context.sampleRate;
      while (tap.context.currentTime < due) await new Promise((resolve) => setTimeout(resolve, 5));
      const sum = new Float32Array(tap.fftSize);
      for (const each of taps) {
        each.getFloatTimeDomainData(part);
        part.forEach((x, k) => (sum[k] += x));
      }
      all.push(...sum);
    }
    return all;
  });
  return integratedLoudness(Float32Array.from(samples), 48_000);
}

test('a blind run tells nothing before its end, goes on after a reload, and is kept', async ({
  page,
  bench: lab
}) => {
  test.setTimeout(180_000);
  await tapTheDevice(page);
  await lab.open();
  await lab.play();
  await lab.hear(2);
  const before = await page.evaluate(() => history.length);

  await page.keyboard.press('KeyT');
  await expect(page.getByRole('heading', { name: 'Listen blind' })).toBeVisible();
  expect(await axeFinds(page)).toEqual([]);
  await page.getByLabel('which do you like better').check();
  await page.getByLabel('How many trials').selectOption('8');
  await expect(page.getByText('one of the two must be chosen 8 of 8 times')).toBeVisible();
  await page.getByRole('button', { name: 'begin 8 trials' }).click();

  const seen: string[] = [];
  for (let trial = 1; trial <= 8; trial++) {
    await expect(page.getByRole('heading', { name: `Trial ${trial} of 8` })).toBeVisible();
    await expect(page.locator('.card').first()).toBeFocused();
    if (trial === 3) {
      await page.reload();
      await expect(page.getByRole('heading', { name: 'Trial 3 of 8' })).toBeVisible();
      await expect(page.getByText('Press play: nothing is heard now.')).toBeVisible();
      await lab.play();
      await page.locator('.card').first().focus();
    }
    // Nothing of the bench answers any more.
    for (const key of ['Digit3', 'PageDown', 'KeyP', 'KeyL', 'Control+z', 'ArrowRight', 'Escape'])
      await page.keyboard.press(key);
    await expect(page.locator('.answer').first()).toBeDisabled();
    const first = await everything(page);
    await page.keyboard.press('b');
    await expect(page.locator('.card').nth(1)).toHaveAttribute('aria-pressed', 'true');
    await expect(page.locator('.answer').first()).toBeEnabled();
    const second = await everything(page);
    for (const all of [first, second])
      for (const word of [...NAMES, 'mount-', 'oval', 'dB', 'LUFS']) expect(all).not.toContain(word);
    seen.push(`${first}\n${second}`.replaceAll(`Trial ${trial} of 8`, 'Trial'));
    if (trial === 1) {
      expect(await axeFinds(page)).toEqual([]);
      const b = await loudness(page);
      await page.keyboard.press('a');
      const a = await loudness(page);
      test.info().annotations.push({ type: 'measured', description: `${a} and ${b} LUFS at the output` });
      expect(Math.abs(a - b)).toBeLessThan(0.2);
      await page.keyboard.press('b');
    }
    if (trial < 8) await page.keyboard.press(trial % 2 ? 'Digit1' : 'Digit2');
    else await page.locator('.answer').last().click();
  }
  // Whatever stood behind the letters, the page was the same to the last letter, before the reload and after it.
  expect(new Set(seen.slice(0, 2)).size).toBe(1);
  expect(new Set(seen.slice(2)).size).toBe(1);
  expect(await page.evaluate(() => history.length)).toBe(before);

  await expect(
    page.getByRole('heading', { name: /^Free air was chosen \d of 8 times, Flat plate \d\.$/ })
  ).toBeFocused();
  await page.getByText('Every trial, with what stood behind the letters').click();
  await expect(page.getByRole('row')).toHaveCount(9);
  expect(await axeFinds(page)).toEqual([]);
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'save all as CSV' }).click();
  const csv = await readFile(await (await saving).path(), 'utf8');
  expect(csv.split('\n')[0]).toBe('run,question,sound,planned,ended,trial,behind_a,behind_b,behind_c,said');
  expect(csv.match(/^1,better,Pink noise,8,whole,\d,/gm)).toHaveLength(8);
  await page.keyboard.press('Escape');
  await expect(lab.stands).toHaveCount(4);
  await expect(lab.stage.locator('header .disc')).toHaveText('2');
});
