import type { Decibels } from '../../units.js';
import type { Box } from '../scales/box.js';
import type { PictureLayout } from '../scales/picture-layout.js';
import { textWidth } from '../scales/text-width.js';

/** One figure of a readout; `look` shows the way it is drawn in the picture. */
export interface NoteRow {
  look: 'filled' | 'outline';
  name: string;
  value: string;
  /** The level itself, for a dot on the curve. */
  levelDb: Decibels;
}

/** What a readout says: a title, figures, and a closing line where there is one. */
export interface Note {
  title: string;
  rows: NoteRow[];
  end: string | null;
}

export interface NoteBox extends Box {
  rowHeight: number;
  padding: number;
}

/** Pixels between the pointed line and the box. */
const LINE_GAP = 14;

/**
 * The size and place of a note beside the pointed line at `x`: on its right, on its left where that is outside; at the
 * floor of the area, where it covers what is filled rather than what stands out.
 */
export function noteBox(note: Note, x: number, { area, textSize, narrow }: PictureLayout): NoteBox {
  const padding = narrow ? 6 : 9;
  const lines = 1 + note.rows.length + (note.end ? 1 : 0);
  const rowHeight = Math.min(textSize * 1.5, (area.bottom - area.top - 4 - 2 * padding) / lines);
  const widest = Math.max(
    textWidth(note.title, textSize) * 1.06,
    textWidth(note.end ?? '', textSize),
    ...note.rows.map(
      ({ name, value }) => textSize * 2.5 + textWidth(name, textSize) + textWidth(value, textSize)
    )
  );
  const width = Math.min(widest + 2 * padding, area.right - area.left - 4);
  const height = lines * rowHeight + 2 * padding;
  const right = x + LINE_GAP + width <= area.right - 2;
  const left = right ? x + LINE_GAP : Math.max(area.left + 2, x - LINE_GAP - width);
  const bottom = area.bottom - Math.max(2, Math.min(10, area.bottom - area.top - height - 2));
  return { left, right: left + width, top: bottom - height, bottom, rowHeight, padding };
}
