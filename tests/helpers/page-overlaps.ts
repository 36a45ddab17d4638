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
    /** Hundreds of texts lie in the same boxes: what is found of one is kept. */
    const once = <T>(find: (element: Element) => T): ((element: Element) => T) => {
      const found = new Map<Element, T>();
      return (element) => {
        if (!found.has(element)) found.set(element, find(element));
        return found.get(element)!;
      };
    };
    const frameOf = once((element) => element.getBoundingClientRect());
    /** What scrolls shows only what lies in its frame. */
    const scroller: (element: Element) => Element | null = once((element) => {
      const scrolls = /auto|scroll/.test(getComputedStyle(element).overflowY);
      if (scrolls && element !== root && element !== document.body) return element;
      return element.parentElement && scroller(element.parentElement);
    });
    /** All around it, and itself, that cut off what reaches out. */
    const clippers: (element: Element) => Element[] = once((element) => {
      const { overflowX, overflowY } = getComputedStyle(element);
      const clips = overflowX === 'hidden' || overflowX === 'clip' || overflowY === 'hidden';
      const further = element.parentElement ? clippers(element.parentElement) : [];
      // What may be cut has its whole text in a title.
      return clips && !element.closest('[title]') ? [element, ...further] : further;
    });

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
      const around = scroller(element);
      const frame = around && frameOf(around);
      const boxes = [...range.getClientRects()]
        .map((box) => (frame ? within(box, frame) : box))
        .filter((box) => box.width > 1 && box.height > 1);
      if (boxes.length) texts.push({ element, boxes, scroller: around });
    }

    for (const { element, boxes } of texts) {
      for (const box of boxes)
        if (!element.closest('.scroll') && (box.left < -0.5 || box.right > innerWidth + 0.5))
          found.push(`${say(element)} leaves the window`);
      for (const around of clippers(element)) {
        const frame = frameOf(around);
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
    const lines = texts
      .flatMap((text) => text.boxes.map((box) => ({ text, ...core(box) })))
      .sort((a, b) => a.top - b.top);
    const told = new Set<string>();
    lines.forEach((line, i) => {
      for (let j = i + 1; j < lines.length && lines[j].top < line.bottom; j++) {
        const below = lines[j];
        if (line.left >= below.right || below.left >= line.right) continue;
        const [one, other] = [line.text, below.text];
        // A scrolling table's head lies over its rows on purpose.
        if (one.scroller !== null && one.scroller === other.scroller && !modal) continue;
        if (one.element.contains(other.element) || other.element.contains(one.element)) continue;
        const [fixed, otherFixed] = [one, other].map(({ element }) => !!element.closest('.thumb-bar'));
        if (fixed === otherFixed) told.add(`${say(one.element)} lies on ${say(other.element)}`);
      }
    });
    found.push(...told);

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
