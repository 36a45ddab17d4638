import type { Listener } from '../../acoustics/listener.js';
import { distanceWords } from '../../format/distance-words.js';

/** From where all is drawn and heard, as the beginning of a sentence. */
export function listenerWords({ angleDeg, plane, distance }: Listener, inches: boolean): string {
  const away = distance === undefined ? 'far away' : distanceWords(distance, inches);
  return `Heard ${sideWords(angleDeg, plane)}, ${away}`;
}

function sideWords(angleDeg: number, plane: Listener['plane']): string {
  if (angleDeg === 0) return 'straight in front of the cone';
  if (Math.abs(angleDeg) === 180) return 'from straight behind';
  return `${Math.abs(angleDeg)}° off the front, ${plane === 'width' ? 'to the side' : 'towards the end'}`;
}
