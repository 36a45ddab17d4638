import type { Air } from '../acoustics/air.js';
import { checkInstallation } from '../acoustics/check-installation.js';
import type { Installation } from '../acoustics/installation.js';
import type { Listener } from '../acoustics/listener.js';
import { reachesDown } from '../acoustics/reaches-down.js';
import type { Response } from '../acoustics/response.js';
import { ruleFigures, type RuleFigures } from '../acoustics/rule-figures.js';
import { ruleOfThumb } from '../acoustics/rule-of-thumb.js';
import { stringPath, type StringPath } from '../acoustics/string-path.js';
import { fftFrequencies, impulseResponse, tapsFor } from '../numeric/impulse-response.js';
import { levelDb } from '../numeric/level-db.js';
import { logGrid } from '../numeric/log-grid.js';
import type { Decibels, Hertz } from '../units.js';

/** The range of the picture; the reach is judged over the same range. */
export const PICTURE = { from: 50, to: 16000 } as const;

/** Points an octave of the drawn curves: enough that they show no corners. */
const POINTS_PER_OCTAVE = 48;

const PICTURE_GRID = logGrid(PICTURE.from, PICTURE.to, POINTS_PER_OCTAVE);

/** Everything computed of one mount: what the picture, the drawings and the sound take from the model. */
export interface Computed {
  figures: RuleFigures;
  string: StringPath | null;
  /** On the picture's grid. */
  response: Response;
  /** |H| in dB on the picture's grid. */
  responseDb: Float64Array;
  /** On the bins of the filter's transform. */
  bins: Response;
  /** What the audio branch convolves with and what the level figures are measured behind. */
  impulseResponse: Float32Array;
  reachesDown: Hertz | null;
}

/**
 * The one way from an installation to all that is shown and heard of it.
 * @throws RangeError with one plain sentence where the installation cannot be.
 */
export function compute(
  installation: Installation,
  air: Air,
  listener: Listener,
  sampleRate: Hertz
): Computed {
  checkInstallation(installation);
  const response = ruleOfThumb(installation, air, listener, PICTURE_GRID, 'full');
  const { bins, impulseResponse: filter } = filterFor(installation, air, listener, sampleRate);
  return {
    figures: ruleFigures(installation, air),
    string: stringPath(installation),
    response,
    responseDb: levelDb(response),
    bins,
    impulseResponse: filter,
    reachesDown: reachesDown(response)
  };
}

/** The FIR of an installation at a sample rate, with the response on the bins it was made from. */
export function filterFor(
  installation: Installation,
  air: Air,
  listener: Listener,
  sampleRate: Hertz
): { bins: Response; impulseResponse: Float32Array } {
  const bins = ruleOfThumb(
    installation,
    air,
    listener,
    fftFrequencies(tapsFor(sampleRate), sampleRate),
    'full'
  );
  return { bins, impulseResponse: impulseResponse(bins, { sampleRate }) };
}

/** A level difference as a modeller would say it. */
export function louderOrQuieter(differenceDb: Decibels): string {
  const rounded = Math.round(differenceDb);
  if (rounded === 0) return 'just as loud';
  return rounded > 0 ? `${rounded} dB louder` : `${-rounded} dB quieter`;
}
