import type { Degrees, Metres } from '../units.js';

/**
 * Where one listens; angle and distance from the middle of the cone. No distance means far field. The angle opens from straight in
 * front of the cone, over a board from straight up.
 */
export interface Listener {
  angleDeg: Degrees;
  /** The plane in which the angle is measured: through the mount's length or its width. */
  plane: 'length' | 'width';
  distance?: Metres;
  /** Whether a hard board lies under every mount, as on a layout; none unless told. */
  board?: boolean;
}

export type Place = 'hand' | 'layout';

/** Where listening begins in each place: held in the hand straight in front of the cone, on a layout to the side and an arm's length off. */
export const PLACES: Readonly<Record<Place, Listener>> = {
  hand: { angleDeg: 0, plane: 'width' },
  layout: { angleDeg: 60, plane: 'width', distance: 0.9, board: true }
};
