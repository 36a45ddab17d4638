import type { Page } from '@playwright/test';

/** So many pictures in a row must be alike: what moves is drawn anew with each of them. */
const ALIKE = 5;

/**
 * Waits until what these selectors name stands as it is: its markup is the same in picture after picture. It counts the
 * page's own pictures, so that a busy machine, which makes fewer of them, has its time.
 */
export function standsStill(page: Page, selector: string): Promise<void> {
  return page.evaluate(
    ({ selector, alike }) =>
      new Promise<void>((done) => {
        let [before, same] = ['', 0];
        const look = (): void => {
          const now = [...document.querySelectorAll(selector)].map((one) => one.outerHTML).join();
          same = now === before ? same + 1 : 0;
          before = now;
          if (same < alike) requestAnimationFrame(look);
          else done();
        };
        // What can wait comes a task after the hand.
        setTimeout(() => requestAnimationFrame(look));
      }),
    { selector, alike: ALIKE }
  );
}
