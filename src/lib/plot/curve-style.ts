/** One of the six ways a curve is drawn: a colour and a line pattern of its own. */
export type CurveStyle = 1 | 2 | 3 | 4 | 5 | 6;

/**
 * Lengths of dash, gap, dash, gap … in stroke widths. Round caps add one width to each dash and take it from each gap,
 * so a dash of 0 is a dot.
 */
const patterns: Record<CurveStyle, readonly number[]> = {
  1: [0, 2.4],
  2: [2.5, 2.4],
  3: [8, 2.8],
  4: [6, 2.6, 0, 2.6],
  5: [6, 2.6, 0, 2.4, 0, 2.6],
  6: [9, 2.6, 2, 2.6]
};

/** The `stroke-dasharray` of a style at a stroke width in pixels. */
export function curveDashes(style: CurveStyle, strokeWidth: number): string {
  return patterns[style].map((length) => Number((length * strokeWidth).toFixed(2))).join(' ');
}

/** What a style's line is like, in a word. */
export function lineWord(style: CurveStyle): string {
  return style === 1 ? 'dotted' : 'dashed';
}

/** The colour of a style: a custom property that the page sets, the ink of the text where it does not. */
export function curveColour(style: CurveStyle): string {
  return `var(--mount-${style}, currentColor)`;
}
