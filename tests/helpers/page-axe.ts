import type { Page } from '@playwright/test';
import axe, { type RunOptions } from 'axe-core';

/** What can differ from one colour scheme to the other. */
export const OF_COLOURS: RunOptions = {
  runOnly: { type: 'rule', values: ['color-contrast', 'link-in-text-block'] }
};

/**
 * What axe finds wrong in the part of the page that this selector names, in words. Its script goes into the page once;
 * the page has no frames, so that nothing has to be gathered from elsewhere.
 */
export async function axeFinds(page: Page, options: RunOptions = {}, part = 'html'): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source);
  return page.evaluate(
    async ({ options, part }) => {
      const { violations } = await (window as unknown as { axe: typeof import('axe-core') }).axe.run(part, {
        ...options,
        resultTypes: ['violations']
      });
      return violations.flatMap(({ id, nodes }) =>
        nodes.map(({ target, failureSummary }) => `${id}: ${target.join(' ')}: ${failureSummary}`)
      );
    },
    { options, part }
  );
}
