import { expect, test } from '@playwright/test';
import { openHarness } from '../helpers/harness.js';

type StartAndStop = typeof import('./harness/start-and-stop.js');

test('the first sound rises out of silence; silence and stop are silent', async ({ page }) => {
  const { peaks, entrance } = await (await openHarness<StartAndStop>(page, 'start-and-stop')).startAndStop();
  expect(peaks.beforePlay).toBe(0);
  expect(peaks.playing).toBeGreaterThan(0.1);
  expect(peaks.silenced).toBeLessThan(1e-6);
  // Two stretches of one programme: their peaks differ by how its tones meet.
  expect(Math.abs(peaks.heardAgain / peaks.playing - 1)).toBeLessThan(0.05);
  expect(peaks.stopped).toBeLessThan(1e-6);
  // The approach, rounded over 25 ms, is at 0.019 after 10 ms and at 0.46 after 50; a mere step would be at 0.35 and 1.
  expect(entrance[0]).toBeLessThan(0.03 * peaks.playing);
  expect(entrance[4]).toBeLessThan(0.6 * peaks.playing);
  expect(Math.max(...entrance)).toBeLessThan(1.05 * peaks.playing);
  expect(Math.max(...entrance.slice(30))).toBeGreaterThan(0.95 * peaks.playing);
});

test('the ear check is a quiet pair of tones, without the sound of the bench', async ({ page }) => {
  const { peak, seconds, above, playing } = await (
    await openHarness<StartAndStop>(page, 'start-and-stop')
  ).earCheck();
  expect(20 * Math.log10(peak)).toBeCloseTo(-30, 1);
  expect(seconds).toBeGreaterThan(1.3);
  expect(seconds).toBeLessThan(1.6);
  expect(20 * Math.log10(above)).toBeLessThan(-110);
  expect(playing).toBe(false);
});
