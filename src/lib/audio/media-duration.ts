import type { Seconds } from '../units.js';

const PATIENCE_MS = 8000;
/** Later than any recording ends: seeking there makes the browser find the end of a file that does not tell it. */
const BEYOND_THE_END: Seconds = 1e9;

/**
 * How long a sound file lasts, as the browser's player reads it from its headers, without decoding it; null if the
 * player cannot read it or does not find its end.
 */
export function mediaDuration(file: Blob): Promise<Seconds | null> {
  const player = new Audio();
  const url = URL.createObjectURL(file);
  return new Promise<Seconds | null>((resolve) => {
    const look = () => {
      if (Number.isFinite(player.duration)) resolve(player.duration);
      else if (player.readyState > 0) player.currentTime = BEYOND_THE_END;
    };
    player.onloadedmetadata = look;
    player.ondurationchange = () => Number.isFinite(player.duration) && resolve(player.duration);
    player.onerror = () => resolve(null);
    setTimeout(() => resolve(null), PATIENCE_MS);
    player.preload = 'metadata';
    player.muted = true;
    player.src = url;
  }).finally(() => {
    player.onloadedmetadata = player.ondurationchange = player.onerror = null;
    player.removeAttribute('src');
    player.load();
    URL.revokeObjectURL(url);
  });
}
