import type { Mount } from '../../../acoustics/mounts/mount.js';
import type { Seconds } from '../../../units.js';

/** What a wave picture of a steady tone shows, in plain words: the colours by what makes them, and what the mount does. */
export function toneCaption(kind: Mount['kind']): string {
  return `Orange: the air is pressed together; blue: it is thinned out; between them it is as ever, on the way from one to the other. The back of the cone always does the opposite of its front. ${effectWords(kind)}`;
}

/** The gist of it, for the back row. */
export function hallCaption(kind: Mount['kind']): string {
  return `The back of the cone does the opposite of its front. ${effectWords(kind)}`;
}

function effectWords(kind: Mount['kind']): string {
  switch (kind) {
    case 'free':
      return 'Nothing keeps the two apart: they cancel.';
    case 'plate':
      return 'The plate lengthens the back’s way round: less cancels.';
    case 'shell':
      return 'The shell lengthens the back’s way round: less cancels.';
    case 'box':
      return 'The box shuts the back in: nothing cancels.';
  }
}

/** A time in a puff: 1.20 ms. */
export function puffTime(time: Seconds): string {
  return `${(time * 1000).toFixed(2)} ms`;
}
