/** Below this share of the full pressure the colour goes by the pressure itself rather than by its root. */
const FAINT = 0.01;

/**
 * The share of full colour that a pressure is drawn with, with the sign of the value, −1 … 1: about the square root of |value|/full,
 * so that a wave 20 dB down still has a quarter of it; but through 0 it goes as a straight line, since a root
 * is so steep there that the change from one sign to the other would look like a line drawn in the air.
 *
 * @param full the pressure that is drawn in full colour, above 0; what is beyond it is drawn so too
 */
export function signedRoot(value: number, full: number): number {
  const share = Math.min(1, Math.abs(value) / full);
  const drawn = (Math.sqrt(share + FAINT) - Math.sqrt(FAINT)) / (Math.sqrt(1 + FAINT) - Math.sqrt(FAINT));
  return value < 0 ? -drawn : drawn;
}
