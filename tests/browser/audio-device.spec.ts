import { expect, test } from '@playwright/test';
import { openHarness } from '../helpers/harness.js';

type Device = typeof import('./harness/device.js');

test('a steady sound on the device has nothing in the band where clicks are looked for', async ({ page }) => {
  const figures = await (await openHarness<Device>(page, 'device')).steady();
  expect(figures.peak).toBeGreaterThan(0.05);
  expect(figures.clickDb).toBeLessThan(-110);
});

test('all knobs at once on the device do not click', async ({ page }) => {
  const knobs = [
    'hear',
    'setBranch',
    'setBenchGain',
    'setVolume',
    'blow',
    'setSound',
    'silence',
    'playOrStop'
  ] as const;
  const { clicks, peak } = await (
    await openHarness<Device>(page, 'device')
  ).clicksWhileTurning([...knobs], 5, -100);
  expect(peak).toBeGreaterThan(0.1);
  // Some eighty turns of a knob. A browser held up in the middle of one may be without sound for a moment, which no page
  // can help; a knob that clicks does so every time. What each does to the sample is asked in audio-clicks.
  expect(clicks).toBeLessThanOrEqual(3);
});
