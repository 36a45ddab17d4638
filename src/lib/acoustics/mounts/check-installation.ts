import type { Metres } from '../../units.js';
import { magnetBelow, type Board } from './board.js';
import { boxVolumes } from './box-volumes.js';
import { checkOpenings } from './check-openings.js';
import type { Installation } from '../installation.js';
import { checkLength, checkWithin, LIMITS, mm, scaled, short, size } from '../limits.js';
import type { BoxMount, PlateMount, ShellMount } from './mount.js';
import { checkSecond } from './second.js';
import { outlineContains, outlineLength, outlineWidth, turned, type Outline } from '../outline.js';
import type { Motor, Speaker } from '../speaker/speaker.js';

export { checkWithin, LIMITS } from '../limits.js';

/**
 * Throws a RangeError with one plain sentence if a value is not finite or beyond `LIMITS`, or if speaker and mount
 * do not fit together: a cone larger than its frame, a cone beyond the edge of its plate (it may fill the plate),
 * a frame wider than the shell or beyond its closed end, a cone beyond the roof's open end, a cone
 * beyond the edge of the front of a box, a box that is shallower than the speaker, and a body that fills the box. A frame that
 * overhangs a plate is accepted: only the plate counts. Over a board: a board that cuts through the mount, and a magnet that touches
 * it. What `checkSecond` and `checkOpenings` refuse. Lengths in messages are in millimetres.
 */
export function checkInstallation(installation: Installation): void {
  const { speaker, turn, board } = installation;
  if (turn !== 0 && turn !== 90) throw new RangeError(`turn must be 0 or 90 degrees, got ${String(turn)}`);
  checkSpeaker(speaker);
  checkMount(installation);
  checkSecond(installation);
  checkOpenings(installation);
  if (board) checkBoard(installation, board);
}

function checkMount(installation: Installation): void {
  const { speaker, mount, turn } = installation;
  const cone = turned(speaker.cone, turn);
  switch (mount.kind) {
    case 'free':
      return;
    case 'plate':
      return checkPlate(mount, cone);
    case 'shell':
      return checkShell(mount, turned(speaker.frame, turn), cone);
    case 'box':
      checkBox(mount, cone, speaker.depth);
      return checkBody(installation);
    default:
      throw new RangeError(
        `a mount must be of the kind free, plate, shell or box, got ${describeKind(mount)}`
      );
  }
}

/**
 * The part of `checkInstallation` that concerns the speaker alone.
 *
 * @throws RangeError for values beyond `LIMITS` and for a cone larger than its frame
 */
export function checkSpeaker({ frame, cone, depth, motor, bodyVolume }: Speaker): void {
  checkOutline('frame', frame);
  checkOutline('cone', cone);
  checkLength('speaker depth', depth, LIMITS.speakerDepth);
  checkMotor(motor);
  checkWithin('body volume', bodyVolume * 1e6, scaled(LIMITS.bodyVolume, 1e6), 'cm³');
  if (!outlineContains(frame, cone))
    throw new RangeError(`the cone (${size(cone)}) is larger than its frame (${size(frame)})`);
}

function checkMotor(motor: Motor): void {
  checkWithin('moving mass', motor.mms * 1000, scaled(LIMITS.mms, 1000), 'g');
  checkWithin('compliance', motor.cms * 1000, scaled(LIMITS.cms, 1000), 'mm/N');
  checkWithin('force factor', motor.bl, LIMITS.bl, 'T·m');
  checkWithin('voice-coil resistance', motor.re, LIMITS.re, 'Ω');
  checkWithin('mechanical quality factor', motor.qms, LIMITS.qms);
  checkLength('largest excursion', motor.xmax, LIMITS.xmax);
  checkWithin('rated power', motor.ratedPower, LIMITS.ratedPower, 'W');
}

function checkPlate(plate: PlateMount, cone: Outline): void {
  checkSides('plate', plate);
  checkOffset('plate offset along the length', plate.offset[0]);
  checkOffset('plate offset across the width', plate.offset[1]);
  if (!outlineContains(plate, cone))
    throw new RangeError(`the cone (${size(cone)}) is larger than the plate (${size(plate)})`);
  if (!outlineContains(plate, cone, plate.offset))
    throw new RangeError(
      `the cone (${size(cone)}), ${mm(plate.offset[0])} and ${mm(plate.offset[1])} mm from the middle, reaches over the edge of the plate (${size(plate)})`
    );
}

function checkShell(shell: ShellMount, frame: Outline, cone: Outline): void {
  for (const side of ['length', 'width', 'height'] as const)
    checkLength(`shell ${side}`, shell[side], LIMITS.mountLength);
  checkOffset('shell offset', shell.offset);
  if (shell.loss !== undefined)
    checkWithin('loss inside the shell', shell.loss * 100, scaled(LIMITS.loss, 100), '%');
  if (outlineWidth(frame) > shell.width * (1 + 1e-9))
    throw new RangeError(
      `the frame (${size(frame)}) does not fit across the shell (${mm(shell.width)} mm wide inside)`
    );
  // beyond an open end a frame may hang over, as over the edge of a plate
  const [what, thing] = shell.ends === 'closed' ? ['frame', frame] : ['cone', cone];
  const reach = Math.abs(shell.offset) + outlineLength(thing) / 2;
  if (reach > (shell.length / 2) * (1 + 1e-9))
    throw new RangeError(
      `the ${what} (${size(thing)}), ${mm(shell.offset)} mm from the middle, reaches over the end of the roof (${mm(shell.length)} mm long inside)`
    );
}

function checkBox(box: BoxMount, cone: Outline, speakerDepth: Metres): void {
  for (const side of ['length', 'width', 'depth'] as const)
    checkLength(`box ${side}`, box[side], LIMITS.mountLength);
  const front: Outline = { shape: 'rectangle', length: box.length, width: box.width };
  if (!outlineContains(front, cone))
    throw new RangeError(
      `the cone (${size(cone)}) is larger than the front of the box (${size(front)} inside)`
    );
  const offset = box.offset ?? [0, 0];
  checkOffset('box offset along the length', offset[0]);
  checkOffset('box offset across the width', offset[1]);
  if (!outlineContains(front, cone, offset))
    throw new RangeError(
      `the cone (${size(cone)}), ${mm(offset[0])} and ${mm(offset[1])} mm from the middle, reaches over the edge of the front of the box (${size(front)} inside)`
    );
  if (box.depth < speakerDepth * (1 - 1e-9))
    throw new RangeError(
      `the box (${mm(box.depth)} mm deep inside) is shallower than the speaker (${mm(speakerDepth)} mm)`
    );
}

function checkBody(installation: Installation): void {
  const { inside, body, net } = boxVolumes(installation);
  if (net <= inside * 1e-9)
    throw new RangeError(
      `the speaker's body fills the box: it takes ${short(body * 1e6)} cm³ and the box holds ${short(inside * 1e6)} cm³`
    );
}

function checkBoard({ speaker, mount }: Installation, { above, facing }: Board): void {
  if (facing !== 'up' && facing !== 'down')
    throw new RangeError(`a mount over the board must face up or down, got ${String(facing)}`);
  const [least, most] = scaled(LIMITS.above, 1000);
  if (!(above >= LIMITS.above[0]))
    throw new RangeError(
      `the board cuts through the mount: its lowest part must be within ${least} … ${most} mm above the board, got ${mm(above)}`
    );
  checkLength('height above the board', above, LIMITS.above);
  const magnet = magnetBelow(speaker, mount, facing);
  if (magnet >= above)
    throw new RangeError(
      `the magnet touches the board: it reaches ${mm(magnet)} mm below the ${mount.kind === 'shell' ? 'lower edge of the shell' : mount.kind === 'plate' ? 'plate' : 'frame'}, which is ${mm(above)} mm above the board`
    );
}

function checkOutline(what: string, outline: Outline): void {
  checkSides(what, outline, LIMITS.speakerLength);
}

function checkSides(
  what: string,
  outline: Outline | PlateMount,
  limits: readonly [number, number] = LIMITS.mountLength
): void {
  if (outline.shape === 'round') return checkLength(`${what} diameter`, outline.diameter, limits);
  checkLength(`${what} length`, outline.length, limits);
  checkLength(`${what} width`, outline.width, limits);
}

function checkOffset(what: string, offset: Metres): void {
  const [, most] = LIMITS.mountLength;
  checkLength(what, offset, [-most, most]);
}

function describeKind(mount: { kind?: unknown }): string {
  return String(mount.kind);
}
