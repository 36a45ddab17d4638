import type { Air } from '../acoustics/air.js';
import type { Installation } from '../acoustics/installation.js';
import type { Listener } from '../acoustics/listener.js';
import type { Response } from '../acoustics/response.js';
import { ruleOfThumb } from '../acoustics/rule/rule-of-thumb.js';
import type { ModelName } from '../file/bench-file.js';
import type { Hertz } from '../units.js';
import type { AccuracyName } from '../waves/mesh/accuracy.js';
import { heardResponse, type HeardWaves } from '../waves/curve/heard-waves.js';

/** What a model says of one installation where one listens: everything shown and heard is made from it. */
export interface Answer {
  model: ModelName;
  /** How finely it was solved; null for a closed form. */
  accuracy: AccuracyName | null;
  /** Up to where it is to be believed; above, its magnitude is held. Infinity for a closed form. */
  solvedTo: Hertz;
  /** The response of the `full` speaker on any grid from 0 Hz. */
  respond: (frequency: Float64Array) => Response;
}

/** @throws RangeError as `ruleOfThumb` does, when it is asked to respond */
export function ruleAnswer(installation: Installation, air: Air, listener: Listener): Answer {
  return {
    model: 'rule',
    accuracy: null,
    solvedTo: Infinity,
    respond: (frequency) => ruleOfThumb(installation, air, listener, frequency, 'full')
  };
}

/** @throws RangeError as `heardResponse` does, when it is asked to respond */
export function waveAnswer(
  heard: HeardWaves,
  accuracy: AccuracyName,
  installation: Installation,
  air: Air
): Answer {
  return {
    model: 'wave',
    accuracy,
    solvedTo: heard.highest,
    respond: (frequency) => heardResponse(heard, installation, air, frequency, 'full')
  };
}
