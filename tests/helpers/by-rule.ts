import type { Installation } from '../../src/lib/acoustics/installation.js';
import { type Answer, ruleAnswer } from '../../src/lib/evaluation/answer.js';
import { compute, type Computed } from '../../src/lib/evaluation/stand.js';
import { AIR, IN_FRONT } from './demo-installations.js';

/** What the rule of thumb says of a mount, straight in front. */
export function byRule(installation: Installation): Answer {
  return ruleAnswer(installation, AIR, IN_FRONT);
}

/** All that is shown and heard of a mount by the rule of thumb. */
export function computedByRule(installation: Installation, sampleRate = 48000): Computed {
  return compute(installation, AIR, byRule(installation), sampleRate);
}
