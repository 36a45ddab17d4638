/** A point of the picture in pixels; y grows downward. */
export interface Point {
  x: number;
  y: number;
}
