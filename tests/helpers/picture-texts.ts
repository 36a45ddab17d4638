import type { Area } from '../../src/lib/plot/scales/area.js';
import { boxesMeet, type Box } from '../../src/lib/plot/scales/box.js';
import { textWidth } from '../../src/lib/plot/scales/text-width.js';

interface Text {
  text: string;
  box: Box;
}

const number = (attributes: string, name: string): number | null => {
  const found = new RegExp(`\\s${name}="(-?[\\d.]+)(em)?"`).exec(attributes);
  return found && Number(found[1]);
};

/** The texts of a drawn picture with the room they take; the numerals of discs, which stand on their curves, are left out. */
export function textsOf(markup: string): Text[] {
  const svg = /<svg[\s\S]*?<\/svg>/.exec(markup)![0];
  const usual = number(/<svg[^>]*>/.exec(svg)![0], 'font-size')!;
  const bare = svg.replace(/<!--.*?-->/g, '').replace(/<g[^>]*transform="translate[\s\S]*?<\/g>/g, '');
  return [...bare.matchAll(/<text([^>]*)>([^<]*)<\/text>/g)].map(([, attributes, text]) => {
    const size = number(attributes, 'font-size') ?? usual;
    const anchor = /text-anchor="(\w+)"/.exec(attributes)?.[1] ?? 'middle';
    const x = number(attributes, 'x')!;
    const y = number(attributes, 'y')! + (number(attributes, 'dy') ?? 0) * size;
    const width = textWidth(text, size);
    const left = x - ({ start: 0, middle: width / 2, end: width }[anchor] ?? 0);
    return { text, box: { left, right: left + width, top: y - 0.7 * size, bottom: y + 0.2 * size } };
  });
}

/** The upright lines of marks, each from its upper end to its lower one. */
export function linesOf(markup: string): { x: number; top: number; bottom: number }[] {
  return [...markup.matchAll(/<path[^>]*? d="M([\d.]+),([\d.]+)V([\d.]+)"/g)].map(([, x, top, bottom]) => ({
    x: Number(x),
    top: Number(top),
    bottom: Number(bottom)
  }));
}

/** What is wrong with the texts of a drawn picture, one sentence each: on each other, in the drawing, or beyond the picture. */
export function wrongTexts(
  texts: readonly Text[],
  area: Area,
  width: number,
  lines: readonly ReturnType<typeof linesOf>[number][] = []
): string[] {
  return texts.flatMap(({ text, box }, i) => [
    ...(boxesMeet(box, area) ? [`"${text}" lies in the drawing`] : []),
    ...(box.left < -1 || box.right > width + 1 || box.top < -1 ? [`"${text}" leaves the picture`] : []),
    ...lines
      .filter(({ x, top, bottom }) => boxesMeet(box, { left: x - 1, right: x + 1, top, bottom }))
      .map(({ x }) => `"${text}" lies on the mark at ${x}`),
    ...texts
      .slice(i + 1)
      .flatMap((other) => (boxesMeet(box, other.box) ? [`"${text}" lies on "${other.text}"`] : []))
  ]);
}
