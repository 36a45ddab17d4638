import { pictureLayout, type PictureLayout } from './picture-layout.js';

/** Height of a picture of level over time, which has less to tell than the response picture: pixels. */
const WIDE = 200;
const NARROW = 150;

/** The layout of the response picture, lower where no height is asked for. */
export function courseLayout(width: number, height: number | undefined): PictureLayout {
  const usual = pictureLayout(width, height, false);
  return height === undefined ? pictureLayout(width, usual.narrow ? NARROW : WIDE, false) : usual;
}
