import type { Area } from './area.js';

/** Sizes of everything in the response picture that depends on how large it is drawn; all in pixels. */
export interface PictureLayout {
  width: number;
  height: number;
  area: Area;
  textSize: number;
  /** Rows of text above the drawing. */
  lanes: number;
  discRadius: number;
  heardStroke: number;
  otherStroke: number;
  /** True where there is no room for long words inside the picture. */
  narrow: boolean;
}

const narrowBelow = 560;

/** Height of a row of text above the drawing, in pixels. */
export function laneHeight(textSize: number): number {
  return 1.25 * textSize;
}

/**
 * Lays out the picture. `bare` is for a projector: text and strokes follow the height so that they carry to the back
 * row. Sizes below 200 × 120 are laid out as that. `lanes` is how many rows of text stand above the drawing.
 */
export function pictureLayout(
  width: number,
  height: number | undefined,
  bare: boolean,
  bareTextSize?: number,
  lanes = 0
): PictureLayout {
  const w = Math.max(200, width);
  const narrow = w < narrowBelow;
  const h = Math.max(120, height ?? (narrow ? 200 : 320));
  const textSize = bare ? (bareTextSize ?? Math.max(16, Math.round(h * 0.065))) : narrow ? 12 : 13;
  // A picture may be part of a larger one: its text then tells how far all of it must carry.
  const heardStroke = bare ? Math.max(5, h / 75, textSize / 4) : narrow ? 3 : 3.5;
  return {
    width: w,
    height: h,
    area: {
      left: Math.round(textSize * 3.9),
      right: w - Math.round(bare ? textSize : narrow ? 4 : 8),
      top: Math.round(textSize * 0.55 + lanes * laneHeight(textSize)),
      bottom: h - Math.round(textSize * 1.85)
    },
    textSize,
    lanes,
    discRadius: bare ? textSize * 0.85 : narrow ? 12 : 13,
    heardStroke,
    otherStroke: bare ? Math.max(3.5, h / 110, textSize / 6) : narrow ? 1.75 : 2,
    narrow
  };
}
