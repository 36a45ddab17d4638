import type { Decibels } from '../../units.js';
import { signed, whole } from '../../format/level-text.js';

export interface LevelTick {
  levelDb: Decibels;
  label: string;
}

/**
 * Lines of the level axis: every 10 dB, or 20 or 40 where figures of `textSize` pixels would stand too close. With `zeroDb` they are
 * written in dB re 20 µPa, and stand at whole tens of that.
 */
export function levelTicks(
  top: Decibels,
  bottom: Decibels,
  pixelsPerDb: number,
  textSize: number,
  zeroDb?: Decibels
): LevelTick[] {
  const step = [10, 20, 40].find((each) => each * pixelsPerDb >= 1.5 * textSize) ?? 80;
  const ticks: LevelTick[] = [];
  const zero = zeroDb ?? 0;
  const written = zeroDb === undefined ? signed : whole;
  for (let at = Math.floor((top + zero) / step) * step; at >= bottom + zero; at -= step)
    ticks.push({ levelDb: at - zero + 0, label: written(at) });
  if (ticks.length > 0) ticks[0].label += ' dB';
  return ticks;
}
