import type { Page } from '@playwright/test';

/** What `ListeningRoom.open` came to, told on the console, so that no call from here counts as a gesture. */
export async function told(page: Page, act: () => Promise<unknown>): Promise<Record<string, unknown>> {
  const message = page.waitForEvent('console', (line) => line.text().startsWith('{'));
  await act();
  return JSON.parse((await message).text());
}
