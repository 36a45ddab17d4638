import type { Page } from '@playwright/test';

/** All that the page could tell: its whole DOM, what assistive technology is told, title, address, history, what has the focus. */
export async function everything(page: Page): Promise<string> {
  const seen = await page.evaluate(() =>
    [
      document.documentElement.outerHTML,
      document.title,
      location.href,
      history.length,
      JSON.stringify(history.state),
      document.activeElement?.outerHTML
    ].join('\n')
  );
  return `${seen}\n${await page.locator('body').ariaSnapshot()}`;
}
