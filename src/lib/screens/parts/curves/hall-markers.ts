import type { Air } from '../../../acoustics/air.js';
import type { Listener } from '../../../acoustics/listener.js';
import type { ResponseMarker } from '../../../plot/response-curve.js';
import type { Stand } from '../../../evaluation/stand.js';
import { lateMarkers } from './late-markers.js';
import { SHORT } from './late-words.js';
import { ringMarker, withRing } from './ring-marker.js';

/** What a hall is told on the curve of the heard mount: where the back adds, where it takes away, where a shell rings. */
export function hallMarkers(
  { computed }: Pick<Stand, 'computed'>,
  air: Air,
  listener: Listener
): ResponseMarker[] {
  const late = lateMarkers({ computed }, air, listener, SHORT);
  const ring = computed && late.length > 0 ? ringMarker(computed) : null;
  return withRing(late, ring && { ...ring, text: 'the shell rings' });
}
