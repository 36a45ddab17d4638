/**
 * The angle of a point about the middle in whole steps of degrees, above −180 and at most 180: 0 is up, to the right of it is
 * positive.
 *
 * @param across to the right, in any unit
 * @param up in the same
 * @param step in degrees, a divisor of 180
 */
export function angleInSteps(across: number, up: number, step: number): number {
  const angle = Math.round((Math.atan2(across, up) * 180) / Math.PI / step) * step + 0;
  return angle === -180 ? 180 : angle;
}
