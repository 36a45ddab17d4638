/** A rectangle that something printed takes up, in pixels; y grows downward. */
export interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** True when two boxes share any of their inside; touching edges do not count. */
export function boxesMeet(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
