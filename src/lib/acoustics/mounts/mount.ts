import type { Metres } from '../../units.js';

/** No plate at all: the frame is the only baffle. */
export interface FreeMount {
  kind: 'free';
}

/** A flat plate; `offset` is where the middle of the cone sits, from the middle of the plate. */
export type PlateMount =
  | { kind: 'plate'; shape: 'rectangle'; length: Metres; width: Metres; offset: [Metres, Metres] }
  | { kind: 'plate'; shape: 'round'; diameter: Metres; offset: [Metres, Metres] };

/** A model's shell, open at the bottom, speaker in the roof; inside sizes; `offset` along the length. */
export interface ShellMount {
  kind: 'shell';
  length: Metres;
  width: Metres;
  height: Metres;
  ends: 'open' | 'closed';
  offset: Metres;
  /** Loss factor of what is inside (loss.ts); the usual one unless told. The rule of thumb has no use for it. */
  loss?: number;
}

/** A closed box; inside sizes; the front is length × width. */
export interface BoxMount {
  kind: 'box';
  length: Metres;
  width: Metres;
  depth: Metres;
}

export type Mount = FreeMount | PlateMount | ShellMount | BoxMount;
export type MountKind = Mount['kind'];
