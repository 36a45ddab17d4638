import type { Installation } from '../../../src/lib/acoustics/installation.js';
import { ruleOfThumb } from '../../../src/lib/acoustics/rule/rule-of-thumb.js';
import { fftFrequencies, impulseResponse, tapsFor } from '../../../src/lib/numeric/impulse-response.js';
import { AIR, DEMO, IN_FRONT, ovalIn } from '../../helpers/demo-installations.js';

/** The impulse response of one installation, as the bench makes it. */
export function filterOf(installation: Installation, sampleRate: number): Float32Array {
  const frequency = fftFrequencies(tapsFor(sampleRate), sampleRate);
  return impulseResponse(ruleOfThumb(installation, AIR, IN_FRONT, frequency, 'full'));
}

/** The impulse responses of the demo's mounts. */
export function demoFilters(sampleRate: number): Float32Array[] {
  return Object.values(DEMO).map((installation) => filterOf(installation, sampleRate));
}

/** A plate that grows from the rim of the speaker to 200 mm, in so many steps. */
export function growingPlate(steps: number, sampleRate: number): Float32Array[] {
  return Array.from({ length: steps }, (_, i) => {
    const side = 0.042 + (0.2 - 0.042) * (i / (steps - 1));
    const plate = ovalIn({ kind: 'plate', shape: 'rectangle', length: side, width: side, offset: [0, 0] });
    return filterOf(plate, sampleRate);
  });
}
