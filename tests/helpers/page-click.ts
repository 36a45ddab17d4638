import { expect, type Locator } from '@playwright/test';

/**
 * Clicks until what the click opens is there. What is measured of a sound comes a moment after it and moves what lies below it,
 * between the mouse's down and its up as well: then the click is lost.
 */
export async function clickUntil(opener: Locator, there: Locator): Promise<void> {
  await expect(async () => {
    if (!(await there.isVisible())) await opener.click();
    await expect(there).toBeVisible({ timeout: 5000 });
  }).toPass();
}
