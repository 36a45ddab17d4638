import type { Air } from '../air.js';
import { checkInstallation } from '../mounts/check-installation.js';
import type { Installation } from '../installation.js';
import { ruleFigures } from './rule-figures.js';
import type { KnobKey } from '../mounts/every-knob.js';
import { withKnob, knobsOf } from '../mounts/size-knobs.js';

/** How far a knob is turned either way to see whether anything comes of it. */
const NUDGE = 0.004;

/** Whether a size, turned a few millimetres either way, leaves everything as it is in the rule of thumb, which knows the mount's own. */
export function changesNothing(installation: Installation, key: KnobKey, air: Air): boolean {
  const knob = knobsOf(installation).find((candidate) => candidate.key === key);
  if (!knob) return false;
  const here = ruleFigures(installation, air);
  return [knob.value - NUDGE, knob.value + NUDGE].every((value) => {
    const mount = withKnob(installation.mount, knob.key, Math.min(knob.max, Math.max(knob.min, value)));
    const nudged = { ...installation, mount };
    try {
      checkInstallation(nudged);
    } catch {
      return true; // it cannot be turned that way at all
    }
    const there = ruleFigures(nudged, air);
    return here.corner === there.corner && here.box?.fc === there.box?.fc;
  });
}
