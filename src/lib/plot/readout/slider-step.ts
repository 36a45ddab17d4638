/**
 * How many third octaves a key moves the readout: one for an arrow, three (an octave) with Shift or by Page Up and Page
 * Down, to the ends of any axis for Home and End. Null for any other key.
 */
export function sliderStep(key: string, shift: boolean): number | null {
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return shift ? 3 : 1;
    case 'ArrowLeft':
    case 'ArrowDown':
      return shift ? -3 : -1;
    case 'PageUp':
      return 3;
    case 'PageDown':
      return -3;
    case 'Home':
      return -Infinity;
    case 'End':
      return Infinity;
    default:
      return null;
  }
}
