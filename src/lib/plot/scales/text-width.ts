/** Widths in text heights of kinds of characters in a plain sans-serif face: rounded up, to be on the safe side. */
const kinds: [RegExp, number][] = [
  [/[iljtfrI .,:;'’|!()·-]/, 0.34],
  [/[mwMW@%…—]/, 0.9],
  [/[A-Z&+−=Ω]/, 0.66]
];
const anyOther = 0.56;

/** A safe estimate of the width of a line of text in pixels, for keeping it clear of other things. */
export function textWidth(text: string, textSize: number): number {
  let width = 0;
  for (const character of text) width += kinds.find(([kind]) => kind.test(character))?.[1] ?? anyOther;
  return width * textSize;
}
