import type { Amplifier, Drive } from '../../acoustics/speaker/drive.js';
import type { Lift } from '../../acoustics/speaker/lift.js';
import type { Motor } from '../../acoustics/speaker/speaker.js';
import type { ImpedanceCurve, Limit, Limits } from '../../evaluation/limits.js';
import { inDigits } from '../../format/in-digits.js';
import { liftWords } from '../parts/words/drive-words.js';
import { frequencyWords } from '../../format/frequency-words.js';

/** One line of what a drive costs: what, how much of how much, and the share that it is. */
export interface CostLine {
  limit: Limit;
  name: string;
  figure: string;
  /** Of what is allowed; above 1 it is too much. */
  share: number;
}

const NAMES: Record<Limit, string> = {
  travel: 'travel of the cone',
  heat: 'heat in the coil, loudest second',
  clipping: 'voltage at its peak'
};

const FIRST: Record<Limit, string> = {
  travel: 'then the cone comes to the end of its travel',
  heat: 'then the coil takes more than its rated power',
  clipping: 'then the amplifier clips'
};

/** What a drive costs on this sound, beside what is allowed. */
export function costLines({ travel, heat, clipping }: Limits, { xmax, ratedPower }: Motor): CostLine[] {
  const lines: CostLine[] = [
    {
      limit: 'travel',
      name: NAMES.travel,
      figure: `${inDigits(travel * 1000, 2)} of ${inDigits(xmax * 1000, 2)} mm`,
      share: travel / xmax
    },
    {
      limit: 'heat',
      name: NAMES.heat,
      figure: `${inDigits(heat.loudest, 2)} of ${inDigits(ratedPower, 2)} W`,
      share: heat.loudest / ratedPower
    }
  ];
  if (clipping !== null)
    lines.push({
      limit: 'clipping',
      name: NAMES.clipping,
      figure: `${Math.round(100 * clipping)} % of the amplifier’s`,
      share: clipping
    });
  return lines;
}

/** The highest safe drive on this sound, as the drive is told, and what comes first above it. */
export function safeWords({ first }: Limits, drive: Drive): string {
  const most =
    'watts' in drive
      ? `${inDigits(first.volts ** 2 / drive.into, 2)} W into ${inDigits(drive.into, 2)} Ω (${inDigits(first.volts, 2)} V)`
      : `${inDigits(first.volts, 2)} V`;
  return `Safe on this sound up to a drive of ${most}: ${FIRST[first.limit]}.`;
}

/** What a lift costs on this sound, beside none. */
export function liftCosts(lift: Lift, lifted: Limits, unlifted: Limits): string {
  const times = (more: number): string => `${inDigits(more, 2)} times`;
  const travel = times(lifted.travel / unlifted.travel);
  const heat = times(lifted.heat.loudest / unlifted.heat.loudest);
  const words = liftWords(lift);
  return `${words[0].toUpperCase()}${words.slice(1)}: ${travel} the travel and ${heat} the heat. The amplifier gives ${inDigits(lifted.terminals, 2)} V then. Without the lift, up to ${inDigits(unlifted.first.volts, 2)} V would be safe.`;
}

/** That the amplifier may drive it, where `loadWarning` says nothing. */
export function loadVerdict({ least }: ImpedanceCurve, { leastLoad }: Amplifier): string {
  const ohms = `${inDigits(least.ohms, 2)} Ω at the least`;
  return least.ohms >= leastLoad
    ? `${ohms}: this amplifier may drive it.`
    : `${ohms}: near enough to the ${inDigits(leastLoad, 2)} Ω that this amplifier needs. A coil measures about a tenth less than it is called (common practice).`;
}

/** A plain warning where the amplifier is given too low a load; null where it is not. */
export function loadWarning({ least }: ImpedanceCurve, { leastLoad }: Amplifier): string | null {
  // A coil stated as 8 Ω measures less: a tenth below is common practice and no fault.
  if (least.ohms >= 0.85 * leastLoad) return null;
  return `Too low a load: ${inDigits(least.ohms, 2)} Ω at ${frequencyWords(least.frequency)}, and this amplifier needs ${inDigits(leastLoad, 2)} Ω. It may switch off or burn; its maker’s instructions decide.`;
}
