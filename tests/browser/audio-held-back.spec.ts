import { expect, test } from '@playwright/test';
import { launchOptions } from '../helpers/launch-options.js';
import { told } from '../helpers/told.js';

// The browser as people have it: no sound before a gesture.
test.use({ launchOptions: launchOptions() });

test('the room says within the time limit that the browser holds the sound back', async ({ page }) => {
  const outcome = await told(page, () => page.goto('/#open'));
  expect(outcome).toMatchObject({
    name: 'SoundUnavailable',
    message:
      'The browser holds the sound back; click play once more, and allow sound for this page if the browser asks.'
  });
  expect(outcome.seconds).toBeGreaterThan(0.9);
  expect(outcome.seconds).toBeLessThan(2);
  const afterwards = await told(page, () => page.mouse.click(50, 50));
  expect(afterwards).toEqual({ state: 'running', sampleRate: 48000 });
});
