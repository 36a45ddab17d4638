import type { CubicMetres, Decibels, Hertz } from '../../units.js';
import type { MotorFigures } from '../speaker/motor-figures.js';

export interface ClosedBox {
  /** Compliance ratio Vas/Vb. */
  alpha: number;
  /** Resonance of the speaker in the box. */
  fc: Hertz;
  /** Total quality factor at fc. */
  qtc: number;
  /** Height of the response's peak over its level far above fc; 0 where there is no peak. */
  peakDb: Decibels;
}

/**
 * A speaker in a closed box: α = Vas/Vb, fc = fs·√(1 + α), Qtc = Qts·√(1 + α), and for Qtc > 1/√2 a peak of
 * Qtc²/√(Qtc² − 1/4) (R. H. Small, "Closed-Box Loudspeaker Systems, Part I: Analysis", J. Audio Eng. Soc. 20
 * (1972) 798). Losses and filling of the box are left out.
 *
 * @param vb net volume of the box in m³, above 0; Infinity where its air is no spring
 * @throws RangeError for another volume
 */
export function closedBox(
  { fs, qts, vas }: Pick<MotorFigures, 'fs' | 'qts' | 'vas'>,
  vb: CubicMetres
): ClosedBox {
  if (!(vb > 0)) throw new RangeError(`the net volume of the box must be above 0 cm³, got ${vb * 1e6}`);
  const alpha = vas / vb;
  const stiffening = Math.sqrt(1 + alpha);
  const qtc = qts * stiffening;
  const peak = qtc > Math.SQRT1_2 ? (qtc * qtc) / Math.sqrt(qtc * qtc - 0.25) : 1;
  return { alpha, fc: fs * stiffening, qtc, peakDb: 20 * Math.log10(peak) };
}
