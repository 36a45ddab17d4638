import type { KnobKey } from '../acoustics/mounts/every-knob.js';
import { isOpeningKey, withOpeningKnob } from '../acoustics/mounts/opening-knobs.js';
import { isSecondKey, withSecondKnob } from '../acoustics/mounts/second-knobs.js';
import { withKnob, type Knob } from '../acoustics/mounts/size-knobs.js';
import type { Setup } from '../file/bench-file.js';
import { quantityAsked, quantityFigure, quantityWords } from '../format/quantity-words.js';

/** The size that a typed value of a knob means, in SI units; one sentence in the shown units where it is beyond its ends. */
export function knobSize(
  { label, quantity, min, max }: Knob<KnobKey>,
  value: number,
  inches: boolean
): number | string {
  if (!Number.isFinite(value)) return `${label} must be ${quantityAsked(quantity)}`;
  const figure = (of: number): string => quantityFigure(of, quantity, inches);
  // An end is typed as it is written, which may be a little beyond it.
  const end = [min, max].find((end) => figure(end) === figure(value));
  const size = value < min || value > max ? (end ?? value) : value;
  return size < min - 1e-9 || size > max + 1e-9
    ? `${label} must be within ${figure(min)} … ${quantityWords(max, quantity, inches)}, got ${quantityWords(value, quantity, inches)}`
    : size;
}

/** What of a setup a knob changes. */
export function turnedPart({ mount, second }: Setup, key: KnobKey, value: number): Partial<Setup> {
  if (key === 'above') return { above: value };
  if (isSecondKey(key)) return { second: second && withSecondKnob(second, key, value) };
  return { mount: isOpeningKey(key) ? withOpeningKnob(mount, key, value) : withKnob(mount, key, value) };
}
