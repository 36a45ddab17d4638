/** What is laid out nowhere, as behind the projector view, is measured as 0 wide and drawn for this width, in pixels. */
const LEAST = 200;

/** The width that a drawing is made for where its room was measured to be so wide. */
export function drawnWidth(measured: number): number {
  return Math.max(LEAST, measured);
}
