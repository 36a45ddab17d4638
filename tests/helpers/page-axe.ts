import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';
import type { RunOptions } from 'axe-core';

/** Half as long as what the package itself hands out. */
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What can differ from one colour scheme to the other. */
export const OF_COLOURS = ['color-contrast', 'link-in-text-block'];

/**
 * What axe finds wrong in the part of the page that this selector names, in words. Its script goes into the page once;
 * the page has no frames, so that nothing has to be gathered from elsewhere.
 */
export async function axeFinds(page: Page, options: RunOptions = {}, part = 'html'): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(AXE);
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

/**
 * What axe finds wrong with the colours of whatever has not been looked at as it stands now, in this scheme: that is half of
 * axe's time, and hangs on an element, what it holds and what it lies in. An element with the same markup and the same state
 * in the same surroundings is looked at once.
 */
export async function axeFindsOfColours(page: Page): Promise<string[]> {
  const changed = await page.evaluate((mark) => {
    const lab = window as unknown as { coloursSeen?: Set<string> };
    const seen = (lab.coloursSeen ??= new Set());
    const scheme = matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
    /** What the markup does not say of it. */
    const state = (one: Element): string =>
      one instanceof HTMLInputElement
        ? `${one.checked} ${one.disabled} ${one.value}`
        : `${one.matches(':popover-open')} ${one.matches(':modal')}`;
    const states = (one: Element): string =>
      [...one.querySelectorAll('input, [popover], dialog')].map(state).join();
    for (const one of document.querySelectorAll(`[${mark}]`)) one.removeAttribute(mark);
    const anew: Element[] = [];
    const look = (one: Element, around: string): void => {
      const print = `${around}\n${state(one)} ${one.outerHTML}\n${states(one)}`;
      if (seen.has(print)) return;
      seen.add(print);
      const hasText = [...one.childNodes].some(
        ({ nodeType, textContent }) => nodeType === Node.TEXT_NODE && textContent?.trim()
      );
      if (hasText || one.matches('svg') || one.querySelectorAll('*').length < 20) anew.push(one);
      else {
        const tag = (one.cloneNode(false) as Element).outerHTML;
        for (const child of one.children) look(child, `${around}${state(one)} ${tag}`);
      }
    };
    look(document.body, scheme);
    for (const one of anew) one.setAttribute(mark, '');
    return anew.length > 0;
  }, TO_LOOK_AT);
  if (!changed) return [];
  return axeFinds(page, { runOnly: { type: 'rule', values: OF_COLOURS } }, `[${TO_LOOK_AT}]`);
}

/** Stands at what `axeFindsOfColours` has to look at. */
const TO_LOOK_AT = 'data-colours-to-look-at';
