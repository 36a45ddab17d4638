import type { Hertz } from '../../units.js';

/** A way of switching: while the motors' frequency is below `upTo`, with a fixed carrier or a multiple of it. */
export interface InverterStep {
  upTo: Hertz;
  /** Fixed carrier in Hz, which knows nothing of the motors' frequency; 0 for a locked one. */
  carrier: Hertz;
  /** Carrier as a whole multiple of the motors' frequency; 0 for a fixed one. */
  multiple: number;
}

/**
 * The steps of an inverter while a train starts: fixed carriers that rise in steps, then carriers locked to odd multiples
 * of the motors' frequency, fewer and fewer, at last one pulse a half wave. That there are such steps is common practice;
 * these are invented.
 */
export const INVERTER_STEPS: readonly InverterStep[] = [
  { upTo: 4, carrier: 400, multiple: 0 },
  { upTo: 8, carrier: 475, multiple: 0 },
  { upTo: 13, carrier: 565, multiple: 0 },
  { upTo: 19, carrier: 672, multiple: 0 },
  { upTo: 27, carrier: 800, multiple: 0 },
  { upTo: 40, carrier: 0, multiple: 21 },
  { upTo: 58, carrier: 0, multiple: 15 },
  { upTo: 82, carrier: 0, multiple: 9 },
  { upTo: 112, carrier: 0, multiple: 5 },
  { upTo: 150, carrier: 0, multiple: 3 },
  { upTo: Infinity, carrier: 0, multiple: 1 }
];

/** From one step to the next within so many hertz of the motors' frequency: some hundredths of a second in a start. */
const CHANGE: Hertz = 0.3;

/** How much of a step is heard at a motor frequency, 0 … 1; the squares of all steps add to 1. */
export function stepShare(step: number, motor: Hertz): number {
  const up = step === 0 ? 1 : crossed(INVERTER_STEPS[step - 1].upTo, motor);
  const down = crossed(INVERTER_STEPS[step].upTo, motor);
  if (up === 0 || down === 1) return 0;
  return Math.sin((Math.PI / 2) * up) * Math.cos((Math.PI / 2) * down);
}

function crossed(edge: Hertz, motor: Hertz): number {
  return Math.min(1, Math.max(0, 0.5 + (motor - edge) / CHANGE));
}
