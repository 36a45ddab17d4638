import { knobFault, type NumberKnob, type SoundUnit } from '../../sounds/knob.js';
import { INCH, KMH_PER_METRE_PER_SECOND, MILE_PER_HOUR } from '../../format/length-units.js';
import { numberFrom } from '../../format/number-from.js';

/** How a unit is written, and how many of it are one of SI. */
interface Written {
  unit: string;
  factor: number;
}

function written(unit: SoundUnit, inches: boolean): Written {
  switch (unit) {
    case 'share':
      return { unit: '%', factor: 100 };
    case 'm':
      return inches ? { unit: 'in', factor: 1 / INCH } : { unit: 'm', factor: 1 };
    case 'm/s':
      return inches
        ? { unit: 'mph', factor: 1 / MILE_PER_HOUR }
        : { unit: 'km/h', factor: KMH_PER_METRE_PER_SECOND };
    case 'rpm':
    case 'Hz':
    case 's':
    case 'cents':
      return { unit, factor: 1 };
    case 'perSecond':
      return { unit: 'a second', factor: 1 };
    case 'perMinute':
      return { unit: 'a minute', factor: 1 };
    case 'count':
    case 'notch':
    case 'seed':
      return { unit: '', factor: 1 };
  }
}

/** The figure of a knob without its unit. */
export function knobFigure(knob: NumberKnob, value: number, inches: boolean): string {
  const { factor } = written(knob.unit, inches);
  return String(Number((value * factor).toPrecision(4))).replace('-', '−');
}

export function knobUnit(knob: NumberKnob, inches: boolean): string {
  return written(knob.unit, inches).unit;
}

/** A typed figure as the knob's value; NaN where it is none. What is within half a last place of an end is the end. */
export function knobFrom(knob: NumberKnob, text: string, inches: boolean): number {
  const { unit, factor } = written(knob.unit, inches);
  const bare = text.trim().endsWith(unit) ? text.trim().slice(0, text.trim().length - unit.length) : text;
  const value = numberFrom(bare) / factor;
  for (const end of [knob.min, knob.max])
    if (knobFigure(knob, value, inches) === knobFigure(knob, end, inches)) return end;
  return value;
}

/** Its range, in the unit of its figure. */
export function knobRange(knob: NumberKnob, inches: boolean): string {
  return `${knobFigure(knob, knob.min, inches)} to ${knobFigure(knob, knob.max, inches)}`;
}

/** What is wrong with a figure for a knob, as a sentence in the units of the page; null where nothing is. */
export function knobSentence(knob: NumberKnob, value: number, inches: boolean): string | null {
  if (knobFault(knob, value) === null) return null;
  const { min, max, name, whole } = knob;
  const unit = knobUnit(knob, inches);
  const range = `${knobFigure(knob, min, inches)} … ${knobFigure(knob, max, inches)}${unit && ` ${unit}`}`;
  const got = Number.isNaN(value) ? 'no number' : knobFigure(knob, value, inches);
  return `${name} must be ${whole ? 'a whole number ' : ''}within ${range}, got ${got}`;
}
