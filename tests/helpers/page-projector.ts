import type { Page } from '@playwright/test';

/**
 * What is wrong with the projector view as it stands, one sentence each; an empty list where all is as it must be. `drawn`: whether there is
 * anything to be drawn.
 */
export function wrongInProjector(page: Page, { drawn = true } = {}): Promise<string[]> {
  return page.evaluate((drawn) => {
    const wrong: string[] = [];
    const view = document.querySelector('.projector')!;
    const [width, height] = [window.innerWidth, window.innerHeight];
    // A scene of words alone has neither a drawing nor a picture.
    const told = view.querySelector('.told') !== null;

    const box = view.getBoundingClientRect();
    if (box.left !== 0 || box.top !== 0 || box.width !== width || box.height !== height)
      wrong.push(`the view is ${box.width} × ${box.height} in a window of ${width} × ${height}`);
    const { scrollWidth, scrollHeight } = document.documentElement;
    if (scrollWidth > width) wrong.push(`the page scrolls sideways: ${scrollWidth} > ${width}`);
    if (scrollHeight > height && getComputedStyle(document.documentElement).overflowY !== 'hidden')
      wrong.push(`the page scrolls: ${scrollHeight} > ${height}`);

    // Every run of text, with what it stands on.
    const walker = document.createTreeWalker(view, NodeFilter.SHOW_TEXT);
    const texts: { text: string; rect: DOMRect; element: Element }[] = [];
    while (walker.nextNode()) {
      const text = walker.currentNode.textContent?.trim();
      const element = walker.currentNode.parentElement!;
      if (!text || element.closest('.hidden')) continue;
      const range = document.createRange();
      range.selectNodeContents(walker.currentNode);
      texts.push({ text, rect: range.getBoundingClientRect(), element });
    }
    if (texts.length < (told ? 1 : 8)) wrong.push(`only ${texts.length} texts found`);

    // A text's box reaches up to a quarter of its size beyond its letters, above and below.
    const letters = ({ rect, element }: (typeof texts)[number]): DOMRect => {
      const spare = parseFloat(getComputedStyle(element).fontSize) / 4;
      return new DOMRect(rect.x, rect.y + spare, rect.width, rect.height - 2 * spare);
    };
    for (const one of texts) {
      const { text, element } = one;
      const rect = letters(one);
      const size = parseFloat(getComputedStyle(element).fontSize);
      if (size < height / 30 - 0.01) wrong.push(`"${text}" is ${size} px high, less than ${height / 30}`);
      for (let holder: Element = element; ; holder = holder.parentElement!) {
        const bounds = holder === view || holder.matches('.words, .right, .picture');
        if (!bounds && getComputedStyle(holder).overflow !== 'hidden') continue;
        const frame = holder.getBoundingClientRect();
        const out = Math.max(
          frame.left - rect.left,
          rect.right - frame.right,
          frame.top - rect.top,
          rect.bottom - frame.bottom
        );
        if (out > 1) wrong.push(`"${text}" is cut off by ${out.toFixed(1)} px at .${holder.className}`);
        if (holder === view) break;
      }
    }

    const area = (a: DOMRect, b: DOMRect): number =>
      Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
      Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top));
    texts.forEach((one, i) => {
      for (const other of texts.slice(i + 1))
        if (one.element !== other.element && area(letters(one), letters(other)) > 4)
          wrong.push(`"${one.text}" lies on "${other.text}"`);
    });

    if (told) return wrong;
    // The drawing touches neither its own frame nor the words.
    for (const holder of view.querySelectorAll('.drawing')) {
      const drawing = holder.getBoundingClientRect();
      for (const path of holder.querySelectorAll('path')) {
        const ink = path.getBoundingClientRect();
        if (
          ink.left < drawing.left - 1 ||
          ink.right > drawing.right + 1 ||
          ink.top < drawing.top - 1 ||
          ink.bottom > drawing.bottom + 1
        )
          wrong.push(`the drawing's ${path.getAttribute('class')} is cut off`);
      }
    }
    if (!view.querySelector('.drawing path, canvas') && drawn && !view.querySelector('.problem'))
      wrong.push('no mount is drawn');

    const curves = [...view.querySelectorAll('path[data-curve]')];
    if (curves.length === 0 && drawn && !view.querySelector('canvas'))
      wrong.push('neither a curve nor the air is drawn');
    for (const curve of curves) {
      const stroke = parseFloat(getComputedStyle(curve).strokeWidth);
      if (stroke < height / 200) wrong.push(`a curve is ${stroke} px thick, less than ${height / 200}`);
    }
    return wrong;
  }, drawn);
}

/** Every text and every curve of the projector view with its contrast against what it stands on. */
export function contrasts(page: Page): Promise<{ what: string; ratio: number }[]> {
  return page.evaluate(() => {
    const channels = (colour: string): number[] => (colour.match(/[\d.]+/g) ?? []).slice(0, 3).map(Number);
    const luminance = (colour: string): number => {
      const [r, g, b] = channels(colour).map((value) => {
        const share = value / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const ratio = (a: string, b: string): number => {
      const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
      return (high + 0.05) / (low + 0.05);
    };
    const ground = (element: Element): string => {
      for (let holder: Element | null = element; holder; holder = holder.parentElement) {
        const colour = getComputedStyle(holder).backgroundColor;
        if (colour !== 'rgba(0, 0, 0, 0)') return colour;
      }
      return 'rgb(255, 255, 255)';
    };
    const view = document.querySelector('.projector')!;
    const paper = getComputedStyle(view).backgroundColor;
    const sheet = getComputedStyle(view.querySelector('.sheet')!).fill;
    const area = getComputedStyle(view.querySelector('path.ground')!).fill;
    const found: { what: string; ratio: number }[] = [];
    for (const element of view.querySelectorAll('h1 .name, .numeral, p, p b, li, button'))
      found.push({
        what: element.textContent!.trim(),
        ratio: ratio(getComputedStyle(element).color, ground(element))
      });
    for (const text of view.querySelectorAll('svg text')) {
      const disc = text.previousElementSibling;
      const behind = disc?.tagName === 'circle' ? getComputedStyle(disc).fill : null;
      for (const one of behind ? [behind] : [paper, sheet, area])
        found.push({ what: text.textContent!, ratio: ratio(getComputedStyle(text).fill, one) });
    }
    for (const path of view.querySelectorAll('path[data-curve], .section path, li path')) {
      const { stroke, fill } = getComputedStyle(path);
      for (const one of [sheet, area])
        found.push({ what: 'a line', ratio: ratio(stroke === 'none' ? fill : stroke, one) });
    }
    return found;
  });
}
