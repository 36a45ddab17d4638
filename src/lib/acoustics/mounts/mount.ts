import type { Metres, SquareMetres } from '../../units.js';

/** A slit from one side to the other round the speaker's frame: its gap, its length along the frame, its depth along the flow. */
export interface SlitLeak {
  gap: Metres;
  length: Metres;
  depth: Metres;
}

/** A round hole through the wall of a box, for a wire or a screw: its diameter, and its depth along the flow. */
export interface HoleLeak {
  hole: Metres;
  depth: Metres;
}

export type Leak = SlitLeak | HoleLeak;

/** The chassis in a shell: a floor with slits round it. */
export interface Chassis {
  /** Of its top over the shell's lower edge. */
  height: Metres;
  /** Gap along each side, and at each end; 0 is touching. In a shell of open ends the chassis goes through, and neither `ends` nor `fill` counts. */
  slit: Metres;
  ends: Metres;
  /** Of the slits, along the flow. */
  depth: Metres;
  /** The share of the space above it that is full of mechanism. */
  fill: number;
}

/** Round holes over the cone, in a wall of that thickness; the speaker is `cavity` behind them. */
export interface Grille {
  holes: number;
  diameter: Metres;
  thickness: Metres;
  cavity: Metres;
}

/** A model's body round a box, which stands in its middle; inside sizes. */
export interface BodyAround {
  length: Metres;
  width: Metres;
  height: Metres;
  /** Area of all its openings together, m². */
  openings: SquareMetres;
}

/**
 * What lets air through, or stands in its way, beside the mount itself. Which mount can have which says `checkOpenings`; the rule of thumb
 * knows none of it.
 */
export interface Openings {
  leak?: Leak;
  chassis?: Chassis;
  grille?: Grille;
  body?: BodyAround;
}

/** No plate at all: the frame is the only baffle. */
export interface FreeMount extends Openings {
  kind: 'free';
}

/** A flat plate; `offset` is where the middle of the cone sits, from the middle of the plate. */
export type PlateMount = Openings &
  (
    | { kind: 'plate'; shape: 'rectangle'; length: Metres; width: Metres; offset: [Metres, Metres] }
    | { kind: 'plate'; shape: 'round'; diameter: Metres; offset: [Metres, Metres] }
  );

/** A model's shell, open at the bottom, speaker in the roof; inside sizes; `offset` along the length. */
export interface ShellMount extends Openings {
  kind: 'shell';
  length: Metres;
  width: Metres;
  height: Metres;
  ends: 'open' | 'closed';
  offset: Metres;
  /** Loss factor of what is inside (loss.ts); the usual one unless told. The rule of thumb has no use for it. */
  loss?: number;
}

/**
 * A closed box; inside sizes; the front is length × width. `offset` is where the middle of the cone sits, from the middle of the front: there unless
 * told.
 */
export interface BoxMount extends Openings {
  kind: 'box';
  length: Metres;
  width: Metres;
  depth: Metres;
  offset?: [Metres, Metres];
}

export type Mount = FreeMount | PlateMount | ShellMount | BoxMount;
export type MountKind = Mount['kind'];

/** The kinds of openings, in the order in which they are written. */
export const OPENING_KINDS = ['leak', 'chassis', 'grille', 'body'] as const;

export function hasOpenings(mount: Mount): boolean {
  return OPENING_KINDS.some((kind) => mount[kind] !== undefined);
}

/** The mount as the rule of thumb knows it. */
export function withoutOpenings(mount: Mount): Mount {
  const bare = { ...mount };
  for (const kind of OPENING_KINDS) delete bare[kind];
  return bare;
}
