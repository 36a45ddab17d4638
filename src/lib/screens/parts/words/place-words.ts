import type { Listener } from '../../../acoustics/listener.js';
import { distanceWords } from '../../../format/distance-words.js';

/** From where all is drawn and heard: *60° to the side at 0.8 m*, *over the board, 60° to the side at 0.8 m*. */
export function placeWords({ angleDeg, plane, distance, board }: Listener, inches: boolean): string {
  const away = distance === undefined ? ', far away' : ` at ${distanceWords(distance, inches)}`;
  if (board)
    return `over the board, ${angleDeg === 0 ? 'straight above' : sideWords(angleDeg, plane)}${away}`;
  return `${sideWords(angleDeg, plane)}${away}`;
}

function sideWords(angleDeg: number, plane: Listener['plane']): string {
  if (angleDeg === 0) return 'in front of the cone';
  if (Math.abs(angleDeg) === 180) return 'behind the cone';
  return `${Math.abs(angleDeg)}° ${plane === 'width' ? 'to the side' : 'towards the end'}`;
}
