import type { Metres, MetresPerSecond } from '../units.js';

/** Units beside those of SI; exact (international yard and pound agreement of 1959). */
export const INCH: Metres = 0.0254;
export const FOOT: Metres = 0.3048;
export const MILE_PER_HOUR: MetresPerSecond = 0.44704;

/** Kilometres an hour that are one metre a second. */
export const KMH_PER_METRE_PER_SECOND = 3.6;
