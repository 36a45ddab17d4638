import { checkLength, checkWithin, LIMITS, mm, scaled } from '../acoustics/limits.js';
import type { Metres, SquareMetres } from '../units.js';
import { overlap, TOUCH, type Block, type Span } from './block.js';

/** Something in the way, as a plain box: motor block, weight, decoder. */
export interface Obstacle {
  name: string;
  /** Its near end, from the left end of the body. */
  from: Metres;
  length: Metres;
  /** Its middle, from the middle line of the body. */
  aside: Metres;
  width: Metres;
  /** Its lower face, over the lower edge of the body. */
  above: Metres;
  height: Metres;
}

/** A model that a speaker is to be fitted into, by its inside sizes. */
export interface Vehicle {
  name: string;
  length: Metres;
  width: Metres;
  height: Metres;
  /** The cab at the right end, where it is not as wide as the rest. */
  cab?: { length: Metres; width: Metres };
  /** Of the lower edge of the body, over the board. */
  above: Metres;
  /** The top of the chassis over the lower edge of the body, and the slits round it; none: the body is empty below. */
  chassis?: { height: Metres; slit: Metres; ends: Metres; depth: Metres };
  obstacles: Obstacle[];
  /** The stretch of the length, from the left end, in which the roof may be cut; absent: nowhere. */
  roof?: Span;
  /** The same of the floor. */
  floor?: Span;
  /** All openings that the body has anyway, windows and grilles, together; 0: none. */
  openings: SquareMetres;
}

export const MOST_OBSTACLES = 6;

/** Least and greatest values of a vehicle, in SI units; what becomes a mount has the limits of mounts besides. */
const VEHICLE_LIMITS = {
  side: [0.005, 1],
  openings: [0, LIMITS.openings[1]]
} as const satisfies Record<string, readonly [number, number]>;

/**
 * @throws RangeError with one sentence for sizes beyond the limits, a cab as long as the body, a chassis as high as it, an obstacle that
 *   reaches out of the body, and a stretch to cut that does
 */
export function checkVehicle(vehicle: Vehicle): void {
  const { length, width, height, cab, above, chassis, obstacles, openings } = vehicle;
  for (const [what, side] of [
    ['length', length],
    ['width', width],
    ['height', height]
  ] as const)
    checkLength(`${what} of the body`, side, VEHICLE_LIMITS.side);
  if (cab) {
    checkLength('length of the cab', cab.length, VEHICLE_LIMITS.side);
    checkLength('width of the cab', cab.width, VEHICLE_LIMITS.side);
    if (!(cab.length < length))
      throw new RangeError(
        `the cab (${mm(cab.length)} mm long) must be shorter than the body that it is part of (${mm(length)} mm)`
      );
  }
  checkLength('height of the body over the board', above, LIMITS.above);
  if (chassis) checkChassis(vehicle, chassis);
  checkWithin('openings of the body', openings * 1e4, scaled(VEHICLE_LIMITS.openings, 1e4), 'cm²');
  for (const [where, stretch] of [
    ['roof', vehicle.roof],
    ['floor', vehicle.floor]
  ] as const)
    if (stretch) checkStretch(where, stretch, length);
  if (obstacles.length > MOST_OBSTACLES)
    throw new RangeError(`at most ${MOST_OBSTACLES} boxes may stand in the way, got ${obstacles.length}`);
  for (const obstacle of obstacles) checkObstacle(vehicle, obstacle);
}

function checkChassis({ width, length, height }: Vehicle, chassis: NonNullable<Vehicle['chassis']>): void {
  checkLength('height of the chassis', chassis.height, [0, LIMITS.mountLength[1]]);
  if (!(chassis.height < height))
    throw new RangeError(
      `the chassis (its top ${mm(chassis.height)} mm above the body's lower edge) is as high as the body (${mm(height)} mm inside)`
    );
  checkLength('slit along the chassis', chassis.slit, LIMITS.slit);
  checkLength('gap at the ends of the chassis', chassis.ends, LIMITS.slit);
  checkLength('depth of the slits', chassis.depth, LIMITS.openingDepth);
  if (2 * chassis.slit >= width || 2 * chassis.ends >= length)
    throw new RangeError(
      `the slits round the chassis (${mm(chassis.slit)} mm along it, ${mm(chassis.ends)} mm at its ends) leave nothing of it`
    );
}

function checkStretch(where: 'roof' | 'floor', [from, until]: Span, length: Metres): void {
  if (!(from >= 0 && until > from && until <= length * (1 + 1e-9)))
    throw new RangeError(
      `the ${where} may be cut from ${mm(from)} to ${mm(until)} mm, which is no stretch of its ${mm(length)} mm`
    );
}

function checkObstacle(vehicle: Vehicle, obstacle: Obstacle): void {
  const { name, length, width, height } = obstacle;
  for (const [what, side] of [
    ['length', length],
    ['width', width],
    ['height', height]
  ] as const)
    checkLength(`${what} of “${name}”`, side, LIMITS.mountLength);
  const block = obstacleBlock(obstacle);
  const [inside, ...walls] = [envelope(vehicle), ...narrowing(vehicle)];
  for (const [axis, low, high] of [
    ['x', 'the left end', 'the right end'],
    ['y', 'the near side', 'the far side'],
    ['z', 'the lower edge', 'the roof']
  ] as const) {
    const out = [inside[axis][0] - block[axis][0], block[axis][1] - inside[axis][1]];
    const over = out.map((by) => by > TOUCH || Number.isNaN(by));
    if (over[0] || over[1])
      throw new RangeError(
        `“${name}” reaches ${mm(over[0] ? out[0] : out[1])} mm out of the body beyond ${over[0] ? low : high}`
      );
  }
  if (walls.some((wall) => overlap(wall, block)))
    throw new RangeError(
      `“${name}” (${mm(width)} mm wide) reaches through the side where the body is narrower`
    );
}

export function obstacleBlock({ from, length, aside, width, above, height }: Obstacle): Block {
  return {
    x: [from, from + length],
    y: [aside - width / 2, aside + width / 2],
    z: [above, above + height]
  };
}

/** The smallest block that holds the whole inside. */
export function envelope({ length, width, height, cab }: Vehicle): Block {
  const half = Math.max(width, cab?.width ?? 0) / 2;
  return { x: [0, length], y: [-half, half], z: [0, height] };
}

/** What of the envelope lies outside of the narrower part, on both sides of it; nothing where all is one width. */
export function narrowing(vehicle: Vehicle): Block[] {
  const { length, width, height, cab } = vehicle;
  if (!cab || cab.width === width) return [];
  const half = Math.max(width, cab.width) / 2;
  const narrow = Math.min(width, cab.width) / 2;
  const x: Span = width < cab.width ? [0, length - cab.length] : [length - cab.length, length];
  const z: Span = [0, height];
  return [
    { x, y: [-half, -narrow], z },
    { x, y: [narrow, half], z }
  ];
}

/** Whether the sound of a box inside leaves the body by its openings: less than this no model of a body takes. */
export function letsSoundOut({ openings }: Vehicle): boolean {
  return openings >= LIMITS.openings[0];
}

/** How wide the body is inside over a stretch of its length: where that takes in two widths, the lesser. */
export function widthOver({ length, width, cab }: Vehicle, [from, until]: Span): Metres {
  if (!cab) return width;
  const border = length - cab.length;
  if (until <= border + TOUCH) return width;
  return from >= border - TOUCH ? cab.width : Math.min(width, cab.width);
}
