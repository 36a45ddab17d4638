import type { Page } from '@playwright/test';

/**
 * What does not lie well on the page, in words: text cut off by its own box, text of the shelf that reaches into
 * the next stand, text that lies on other text, anything that makes the page wider than the window.
 */
export function overlaps(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const root = document.documentElement;
    if (root.scrollWidth > innerWidth) found.push(`the page is ${root.scrollWidth} px wide in ${innerWidth}`);

    const modal = document.querySelector('dialog[open]');
    const visible = (element: Element): boolean =>
      element.checkVisibility({ visibilityProperty: true }) &&
      !element.closest('.hidden, [popover]') &&
      (!modal || modal.contains(element));
    const say = (element: Element): string =>
      `"${element.textContent?.trim().replace(/\s+/g, ' ').slice(0, 60)}"`;
    /** What scrolls shows only what lies in its frame. */
    const scroller = (element: Element): Element | null => {
      for (let around: Element | null = element; around; around = around.parentElement)
        if (
          /auto|scroll/.test(getComputedStyle(around).overflowY) &&
          around !== root &&
          around !== document.body
        )
          return around;
      return null;
    };

    const within = ({ left, top, right, bottom }: DOMRect, frame: DOMRect): DOMRect => {
      const [x, y] = [Math.max(left, frame.left), Math.max(top, frame.top)];
      return new DOMRect(
        x,
        y,
        Math.max(0, Math.min(right, frame.right) - x),
        Math.max(0, Math.min(bottom, frame.bottom) - y)
      );
    };

    // Every piece of text with the boxes of its lines, of the page and of its drawings.
    const texts: { element: Element; boxes: DOMRect[]; scroller: Element | null }[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const element = node.parentElement!;
      if (!node.textContent?.trim() || !visible(element) || element.closest('script, style, option'))
        continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      const frame = scroller(element)?.getBoundingClientRect();
      const boxes = [...range.getClientRects()]
        .map((box) => (frame ? within(box, frame) : box))
        .filter((box) => box.width > 1 && box.height > 1);
      if (boxes.length) texts.push({ element, boxes, scroller: scroller(element) });
    }

    for (const { element, boxes } of texts) {
      for (const box of boxes)
        if (!element.closest('.scroll') && (box.left < -0.5 || box.right > innerWidth + 0.5))
          found.push(`${say(element)} leaves the window`);
      for (let around: Element | null = element; around; around = around.parentElement) {
        const { overflowX, overflowY } = getComputedStyle(around);
        const clips = overflowX === 'hidden' || overflowX === 'clip' || overflowY === 'hidden';
        // What may be cut has its whole text in a title.
        if (!clips || around.closest('[title]')) continue;
        const frame = around.getBoundingClientRect();
        if (boxes.some((box) => box.left < frame.left - 1 || box.right > frame.right + 1))
          found.push(`${say(element)} is cut off`);
      }
    }

    // A line box is taller than its letters: only their middle counts.
    const core = (box: DOMRect) => ({
      left: box.left + 1,
      right: box.right - 1,
      top: box.top + box.height * 0.28,
      bottom: box.bottom - box.height * 0.28
    });
    for (let i = 0; i < texts.length; i++)
      for (let j = i + 1; j < texts.length; j++) {
        const [one, other] = [texts[i], texts[j]];
        // A scrolling table's head lies over its rows on purpose.
        if (one.scroller !== null && one.scroller === other.scroller && !modal) continue;
        if (one.element.contains(other.element) || other.element.contains(one.element)) continue;
        const meets = one.boxes.some((a) =>
          other.boxes.some((b) => {
            const [p, q] = [core(a), core(b)];
            return p.left < q.right && q.left < p.right && p.top < q.bottom && q.top < p.bottom;
          })
        );
        const [fixed, otherFixed] = [one, other].map(({ element }) => !!element.closest('.thumb-bar'));
        if (meets && fixed === otherFixed) found.push(`${say(one.element)} lies on ${say(other.element)}`);
      }

    const stands = [...document.querySelectorAll('.shelf ol > li')].filter(visible);
    for (const stand of stands) {
      const frame = stand.getBoundingClientRect();
      for (const { element, boxes } of texts)
        if (
          stand.contains(element) &&
          boxes.some((box) => box.right > frame.right + 1 || box.left < frame.left - 1)
        )
          found.push(`${say(element)} reaches out of its stand`);
    }
    return found;
  });
}

/** Controls that are smaller than `least` pixels either way, in words; links inside a sentence are exempt. */
export function smallTargets(page: Page, least: number, among: string): Promise<string[]> {
  return page.evaluate(
    ({ least, among }) =>
      [...document.querySelectorAll(among)]
        .filter(
          (element) => element.checkVisibility({ visibilityProperty: true }) && !element.closest('.hidden')
        )
        .flatMap((element) => {
          // A round or square box is pressed by its label, too.
          const pressed =
            element.matches('input[type="radio"], input[type="checkbox"]') && element.closest('label');
          const { width, height } = (pressed || element).getBoundingClientRect();
          const name = element.getAttribute('aria-label') ?? element.textContent?.trim().slice(0, 40);
          return Math.min(width, height) < least - 0.5
            ? [`"${name}" is ${Math.round(width)} × ${Math.round(height)} px`]
            : [];
        }),
    { least, among }
  );
}
