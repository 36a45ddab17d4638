/**
 * The share of full colour that a pressure is drawn with: the square root of |value|/full with the sign of the value, −1 … 1, so
 * that a wave 20 dB down still has a third of it.
 *
 * @param full the pressure that is drawn in full colour, above 0; what is beyond it is drawn so too
 */
export function signedRoot(value: number, full: number): number {
  const share = Math.min(1, Math.abs(value) / full);
  return value < 0 ? -Math.sqrt(share) : Math.sqrt(share);
}
