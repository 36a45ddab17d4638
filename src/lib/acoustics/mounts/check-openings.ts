import type { Installation } from '../installation.js';
import { outlineArea, outlineLength, outlineWidth, type Outline } from '../outline.js';
import type { CubicMetres, Metres } from '../../units.js';
import type { Speaker } from '../speaker/speaker.js';
import { checkLength, checkWithin, LIMITS, mm, scaled, short, size } from '../limits.js';
import type { BodyAround, BoxMount, Chassis, Grille, Leak, Mount, ShellMount } from './mount.js';

/** Round holes fill this share of a plane where they lie as close as they can. */
const CLOSEST = Math.PI / (2 * Math.sqrt(3));
/** A body leaves so much air round its box at least. */
const ROUND_BOX: Metres = 0.001;
/** The share of its two long sides that a body's openings take at most. */
const MOST_OPEN = 0.8;

/**
 * Throws a RangeError with one plain sentence for what a mount cannot have, and for values beyond `LIMITS`: a leak in free air, a hole
 * in anything but a box, a chassis in anything but a shell, taller than it, or with slits as wide as it; a magnet that touches the
 * chassis; more holes than fit over the cone, a grille over two; a body round anything but a box, one that is smaller than its box, or openings larger than
 * its sides.
 *
 * @param installation of which speaker and mount have been checked
 */
export function checkOpenings({ speaker, mount, second }: Installation): void {
  const { leak, chassis, grille, body } = mount;
  if (grille && second)
    throw new RangeError(
      'a grille is known over one speaker alone: take the second speaker out, or leave the grille out'
    );
  if (leak) checkLeak(mount, leak);
  if (chassis) checkChassis(mount, chassis, speaker, (second ? 2 : 1) * speaker.bodyVolume);
  if (grille) checkGrille(grille, speaker);
  if (body) checkBodyAround(mount, body);
}

function checkLeak(mount: Mount, leak: Leak): void {
  if (mount.kind === 'free')
    throw new RangeError('free air has no leak: there is air all round the frame already');
  checkLength('depth of the leak', leak.depth, LIMITS.openingDepth);
  if ('hole' in leak) {
    if (mount.kind !== 'box')
      throw new RangeError(
        `only a box has a wall to put a hole through: a ${mount.kind} leaks round the frame, by gap and length`
      );
    checkLength('diameter of the hole', leak.hole, LIMITS.hole);
    if (leak.hole > Math.min(mount.length, mount.width))
      throw new RangeError(
        `the hole (ø ${mm(leak.hole)} mm) is wider than the box (${mm(mount.length)} × ${mm(mount.width)} mm inside)`
      );
    return;
  }
  checkLength('gap of the leak', leak.gap, LIMITS.leakGap);
  checkLength('length of the leak', leak.length, LIMITS.leakLength);
}

function checkChassis(
  mount: Mount,
  chassis: Chassis,
  { depth: speakerDepth }: Speaker,
  bodyVolume: CubicMetres
): void {
  if (mount.kind !== 'shell')
    throw new RangeError(`only a shell has a chassis in it, a mount of kind ${mount.kind} has none`);
  const { height, slit, ends, depth, fill } = chassis;
  if (!(height < mount.height))
    throw new RangeError(
      `the chassis (its top ${mm(height)} mm above the shell's lower edge) is taller than the shell (${mm(mount.height)} mm high inside)`
    );
  checkLength('height of the chassis', height, [0, mount.height]);
  checkLength('slit along the chassis', slit, LIMITS.slit);
  checkLength('gap at the ends of the chassis', ends, LIMITS.slit);
  checkLength('depth of the slits', depth, LIMITS.openingDepth);
  checkWithin('fill above the chassis', fill * 100, scaled(LIMITS.fill, 100), '%');
  checkSlits(mount, chassis);
  const room = mount.height - height;
  if (speakerDepth >= room)
    throw new RangeError(
      `the magnet touches the chassis: it reaches ${mm(speakerDepth)} mm below the roof, and the chassis is ${mm(room)} mm below it`
    );
  const air = mount.length * mount.width * room * (1 - fill);
  if (mount.ends === 'closed' && bodyVolume >= air * (1 - 1e-9))
    throw new RangeError(
      `the speaker's body fills the space above the chassis: it takes ${short(bodyVolume * 1e6)} cm³ and the mechanism leaves ${short(air * 1e6)} cm³`
    );
}

function checkSlits({ length, width }: ShellMount, { slit, ends }: Chassis): void {
  if (2 * slit >= width)
    throw new RangeError(
      `the slits along the chassis (two of ${mm(slit)} mm) are wider than the shell (${mm(width)} mm wide inside)`
    );
  if (2 * ends >= length)
    throw new RangeError(
      `the gaps at the ends of the chassis (two of ${mm(ends)} mm) are longer than the shell (${mm(length)} mm long inside)`
    );
}

function checkGrille({ holes, diameter, thickness, cavity }: Grille, { cone }: Speaker): void {
  if (!Number.isInteger(holes))
    throw new RangeError(`a grille must have a whole number of holes, got ${short(holes)}`);
  checkWithin('number of holes', holes, LIMITS.holes);
  checkLength('diameter of the holes', diameter, LIMITS.holeDiameter);
  checkLength('thickness of the grille', thickness, LIMITS.grilleThickness);
  checkLength('cavity behind the grille', cavity, LIMITS.cavity);
  const most = mostHoles(cone, diameter);
  if (holes > most)
    throw new RangeError(
      `at most ${most} holes of ø ${mm(diameter)} mm fit over the cone (${size(cone)}), got ${holes}`
    );
}

/** How many round holes fit over a cone, as close as they can lie. */
export function mostHoles(cone: Outline, diameter: Metres): number {
  if (diameter > Math.min(outlineLength(cone), outlineWidth(cone))) return 0;
  return Math.max(1, Math.floor((CLOSEST * outlineArea(cone)) / ((Math.PI / 4) * diameter ** 2)));
}

function checkBodyAround(mount: Mount, body: BodyAround): void {
  if (mount.kind !== 'box')
    throw new RangeError(`only a closed box has a body round it, a mount of kind ${mount.kind} has none`);
  for (const side of ['length', 'width', 'height'] as const)
    checkLength(`body ${side}`, body[side], LIMITS.mountLength);
  const least = leastBody(mount);
  if (body.length < least.length || body.width < least.width || body.height < least.height)
    throw new RangeError(
      `the body (${mm(body.length)} × ${mm(body.width)} × ${mm(body.height)} mm inside) is smaller than its box (${mm(mount.length)} × ${mm(mount.width)} × ${mm(mount.depth)} mm inside, and ${mm(ROUND_BOX)} mm of air on every side)`
    );
  checkWithin('openings of the body', body.openings * 1e4, scaled(LIMITS.openings, 1e4), 'cm²');
  const most = mostOpenings(body);
  if (body.openings > most)
    throw new RangeError(
      `the body's openings (${short(body.openings * 1e4)} cm²) are larger than its two long sides hold (${short(most * 1e4)} cm²)`
    );
}

/** The smallest body that takes a box. */
export function leastBody({ length, width, depth }: BoxMount): Omit<BodyAround, 'openings'> {
  const more = 2 * ROUND_BOX * (1 - 1e-9);
  return { length: length + more, width: width + more, height: depth + more };
}

/** The largest box that a body takes. */
export function largestBox({ length, width, height }: Omit<BodyAround, 'openings'>): {
  length: Metres;
  width: Metres;
  depth: Metres;
} {
  const less = 2 * ROUND_BOX;
  return { length: length - less, width: width - less, depth: height - less };
}

/** The largest openings that a body's two long sides hold, m². */
export function mostOpenings({ length, height }: Omit<BodyAround, 'openings'>): number {
  return MOST_OPEN * 2 * length * height;
}
