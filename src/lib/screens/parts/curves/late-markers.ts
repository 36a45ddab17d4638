import { soundSpeed, type Air } from '../../../acoustics/air.js';
import { humpAndHole } from '../../../acoustics/figures/hump-and-hole.js';
import type { Listener } from '../../../acoustics/listener.js';
import type { ResponseMarker } from '../../../plot/response-curve.js';
import { takenOut } from '../../../evaluation/answer.js';
import { models } from '../../../evaluation/models.js';
import type { Stand } from '../../../evaluation/stand.js';
import type { LateWords } from './late-words.js';

/** The back is hardly late where its way round is so small a part of a wave: 12 dB below by the rule of thumb. */
const HARDLY = 8;

/**
 * How late the back comes where it is opposite to the front, and where in step with it: for open mounts that are solved in full,
 * straight in front, where there is a plain hump; not over a board, which adds a third wave.
 */
export function lateMarkers(
  { computed }: Pick<Stand, 'computed'>,
  air: Air,
  { angleDeg, board }: Listener,
  words: LateWords
): ResponseMarker[] {
  if (!computed || angleDeg !== 0 || board) return [];
  const { answer, response, figures } = computed;
  if (!models[answer.model].ripples || answer.provisional) return [];
  if (figures.string === null || figures.corner === null) return [];
  const { hump, hole } = humpAndHole(takenOut(response, answer), figures.corner / 2, answer.solvedTo);
  if (hump === null) return [];
  const low = soundSpeed(air) / (HARDLY * figures.string);
  const markers: ResponseMarker[] = [{ frequency: hump, text: words.half, kind: 'remark' }];
  if (hole !== null) markers.push({ frequency: hole, text: words.whole, kind: 'remark' });
  if (low < hump / 2) markers.push({ frequency: low, text: words.hardly, kind: 'range-below' });
  return markers;
}
