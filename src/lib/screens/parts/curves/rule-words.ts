import type { RuleReach } from './rule-reaches.js';
import { frequencyWords } from '../../../format/frequency-words.js';

/** The rule of thumb's name with how far it goes where that is known, for a hall. */
export function ruleWords(reach: RuleReach | null): string {
  if (reach === null) return 'rule of thumb';
  const { upTo, end } = reach;
  if (upTo === null) return 'rule of thumb: poor in the bass';
  if (upTo >= end) return 'rule of thumb, good all through';
  return `rule of thumb, good to ${frequencyWords(Number(upTo.toPrecision(2))).replace(' ', '\u00a0')}`;
}
