import type { Page } from '@playwright/test';

/**
 * Whether the browser draws this page: two frames come within the time. A page that does not even answer is not the browser's
 * doing, and is said to be drawn.
 */
export async function isDrawn(page: Page, withinMs = 5000): Promise<boolean> {
  const soon = async (answer: Promise<boolean>): Promise<boolean> => {
    let late: NodeJS.Timeout | undefined;
    const tooLate = new Promise<boolean>((resolve) => (late = setTimeout(() => resolve(false), withinMs)));
    return Promise.race([answer.catch(() => true), tooLate]).finally(() => clearTimeout(late));
  };
  if (!(await soon(page.evaluate(() => true)))) return true;
  return soon(
    page.evaluate(
      () =>
        new Promise<boolean>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))
    )
  );
}
