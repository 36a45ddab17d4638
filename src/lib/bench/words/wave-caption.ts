import type { Seconds } from '../../units.js';

/** What a wave picture shows, in plain words: the colours by what makes them. */
export function toneCaption(): string {
  return 'Orange: the air is pressed together; blue: it is thinned out; white: neither. The back of the cone always does the opposite of its front, and where the two meet they cancel.';
}

/** The same of a puff, so many seconds after the cone has begun to move. */
export function puffCaption(time: Seconds): string {
  return `${puffTime(time)} after one short push of the cone. First orange leaves its front and blue its back; then the air swings back and rings on. Where the two meet they cancel.`;
}

/** The gist of either, for the back row. */
export function hallCaption(): string {
  return 'The back of the cone does the opposite of its front; where the two meet they cancel.';
}

/** A time in a puff: 1.20 ms. */
export function puffTime(time: Seconds): string {
  return `${(time * 1000).toFixed(2)} ms`;
}
