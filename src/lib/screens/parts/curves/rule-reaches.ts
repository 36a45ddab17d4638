import { agreesUpTo } from '../../../acoustics/figures/agrees-up-to.js';
import type { Decibels, Hertz } from '../../../units.js';
import { ruleBeside, type HeardWhere } from './stand-curves.js';

/** The rule of thumb is called good as far as it stays so close to the wave solution: a factor of two in power. */
const GOOD: Decibels = 3;

/** How far the rule of thumb goes for the heard mount. */
export interface RuleReach {
  /** Up to where it is good, on the way up; null where it is off in the bass already. */
  upTo: Hertz | null;
  /** Up to where there is a wave solution to hold it against. */
  end: Hertz;
}

/** Null where they cannot be compared: without a full wave solution, and off the axis, of which the rule knows nothing. */
export function ruleReaches(where: HeardWhere): RuleReach | null {
  const { computed } = where.heard;
  if (!computed || computed.answer.provisional || where.listener.angleDeg !== 0) return null;
  const [rule] = ruleBeside(where);
  if (!rule) return null;
  const { frequency } = computed.response;
  const beyond = frequency.findIndex((f) => f > computed.answer.solvedTo);
  const solved = frequency.subarray(0, beyond < 0 ? undefined : beyond);
  return {
    upTo: agreesUpTo(solved, rule.levelDb, computed.responseDb, GOOD),
    end: solved[solved.length - 1]
  };
}
