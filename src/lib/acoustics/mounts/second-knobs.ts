import type { Installation } from '../installation.js';
import { outlineLength, outlineWidth, turned } from '../outline.js';
import { checkInstallation } from './check-installation.js';
import { faceOf, firstAt, type Second } from './second.js';
import type { Knob } from './size-knobs.js';

/** Where a second speaker is. */
export type SecondKey = 'second.along' | 'second.across';

const STEP = 0.001;
/** Left between two frames. */
const CLEAR = 0.001;

export function isSecondKey(key: string): key is SecondKey {
  return key === 'second.along' || key === 'second.across';
}

/** The knobs of a second speaker; its cone stays within the sides of plate, roof or front. */
export function secondKnobs({ speaker, mount, turn, second }: Installation): Knob<SecondKey>[] {
  if (!second || mount.kind === 'free') return [];
  const cone = turned(speaker.cone, turn);
  const face = faceOf(mount);
  const within = (side: number, own: number) => Math.max(0, Math.floor(500 * (side - own)) / 1000);
  const knob = (key: SecondKey, label: string, value: number, room: number): Knob<SecondKey> => ({
    key,
    label,
    value,
    min: Math.min(-room, value),
    max: Math.max(room, value),
    step: STEP
  });
  return [
    knob('second.along', 'second, along', second.at[0], within(outlineLength(face), outlineLength(cone))),
    knob('second.across', 'second, across', second.at[1], within(outlineWidth(face), outlineWidth(cone)))
  ];
}

export function withSecondKnob(second: Second, key: SecondKey, value: number): Second {
  const [x, y] = second.at;
  // no −0: a file would give it back as 0
  return { ...second, at: key === 'second.along' ? [value + 0, y] : [x, value + 0] };
}

/**
 * A second speaker where it first fits: beside the first along the length, then across it, then mirrored in the middle. Null where
 * there is no room.
 */
export function usualSecond(installation: Installation): Second | null {
  const { speaker, mount, turn } = installation;
  const frame = turned(speaker.frame, turn);
  const [x, y] = firstAt(mount);
  const away = (middle: number, by: number) => (middle > 0 ? middle - by : middle + by);
  const rounded = (value: number) => Math.round(value * 1e6) / 1e6 + 0;
  const places: [number, number][] = [
    [away(x, outlineLength(frame) + CLEAR), y],
    [x, away(y, outlineWidth(frame) + CLEAR)],
    [-x, -y]
  ];
  for (const [along, across] of places) {
    const second: Second = { at: [rounded(along), rounded(across)], reversed: false, wiring: 'parallel' };
    try {
      checkInstallation({ ...installation, second });
      return second;
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
  }
  return null;
}
