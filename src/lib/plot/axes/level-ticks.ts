import type { Decibels } from '../../units.js';
import { signed } from '../../format/level-text.js';

export interface LevelTick {
  levelDb: Decibels;
  label: string;
}

/** Lines of the level axis: every 10 dB, or 20 or 40 where figures of `textSize` pixels would stand too close. */
export function levelTicks(
  top: Decibels,
  bottom: Decibels,
  pixelsPerDb: number,
  textSize: number
): LevelTick[] {
  const step = [10, 20, 40].find((each) => each * pixelsPerDb >= 1.5 * textSize) ?? 80;
  const ticks: LevelTick[] = [];
  for (let levelDb = Math.floor(top / step) * step; levelDb >= bottom; levelDb -= step)
    ticks.push({ levelDb: levelDb + 0, label: signed(levelDb) });
  if (ticks.length > 0) ticks[0].label += ' dB';
  return ticks;
}
