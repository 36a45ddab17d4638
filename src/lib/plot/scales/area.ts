/** The rectangle the curves are drawn in, in pixels of the picture; y grows downward. */
export interface Area {
  left: number;
  right: number;
  top: number;
  bottom: number;
}
