import type { Metres } from '../units.js';
import { TOUCH, type Span } from './block.js';
import { nearest } from './candidate.js';

/**
 * Two places side by side about a middle, moved as far as the spans ask in which they may be, and how far the farther one is from that middle.
 *
 * @param apart least distance of the second from the first
 * @returns null where they cannot be so far apart
 */
export function pairWithin(
  first: Span,
  second: Span,
  apart: Metres,
  middle: Metres
): { at: [Metres, Metres]; away: Metres } | null {
  if (second[1] - first[0] < apart - TOUCH) return null;
  const one = Math.max(Math.min(nearest(first, middle - apart / 2), second[1] - apart), first[0]);
  const two = nearest(second, Math.max(one + apart, middle + apart / 2));
  if (two - one < apart - TOUCH) return null;
  return { at: [one, two], away: Math.max(Math.abs(one - middle), Math.abs(two - middle)) };
}
