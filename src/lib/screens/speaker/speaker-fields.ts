import { outlineLength, outlineWidth, type Outline } from '../../acoustics/outline.js';
import type { Motor } from '../../acoustics/speaker/speaker.js';
import type { SpeakerPart } from '../../drawing/speaker-drawing.js';
import type { BenchSpeaker } from '../../file/bench-file.js';
import { inDigits } from '../../format/in-digits.js';
import { INCH } from '../../format/length-units.js';
import { lengthFrom } from '../../format/length-words.js';
import { numberFrom } from '../../format/number-from.js';
import type { Metres } from '../../units.js';

/** One figure of a speaker: what it is called, the part that it belongs to, how it is shown, and the speaker with another one. */
export interface SpeakerField {
  part: SpeakerPart;
  label: string;
  unit: string;
  figure: string;
  /** What was typed; NaN where it is none. */
  from: (typed: string) => number;
  /** The speaker with what was typed. */
  with: (value: number) => BenchSpeaker;
}

function field(
  part: SpeakerPart,
  label: string,
  unit: string,
  shown: number | undefined,
  make: SpeakerField['with']
): SpeakerField {
  const figure = shown === undefined ? '' : inDigits(shown, 4);
  return { part, label, unit, figure, from: numberFrom, with: make };
}

/** A length is shown in millimetres or inches, and typed with any unit. */
function lengthField(
  part: SpeakerPart,
  label: string,
  inches: boolean,
  length: Metres,
  make: (length: Metres) => BenchSpeaker
): SpeakerField {
  return {
    // Of 22.5 · 0.001 a file would say 0.022500000000000003.
    ...field(part, label, inches ? 'in' : 'mm', inches ? length / INCH : length * 1000, (typed) =>
      make(Number(typed.toPrecision(12)))
    ),
    from: (typed) => lengthFrom(typed, inches)
  };
}

function sides(speaker: BenchSpeaker, what: 'frame' | 'cone', inches: boolean): SpeakerField[] {
  const outline = speaker[what];
  const one = (part: SpeakerPart, label: string, size: Metres, make: (size: Metres) => Outline) =>
    lengthField(part, `${what} ${label}`, inches, size, (typed) => ({ ...speaker, [what]: make(typed) }));
  if (outline.shape === 'round')
    return [one(`${what}Length`, 'diameter', outline.diameter, (diameter) => ({ ...outline, diameter }))];
  return [
    one(`${what}Length`, 'length', outlineLength(outline), (length) => ({ ...outline, length })),
    one(`${what}Width`, 'width', outlineWidth(outline), (width) => ({ ...outline, width }))
  ];
}

/** The sizes that a view from the front shows. */
export function frontFields(
  speaker: BenchSpeaker,
  inches: boolean
): Record<'frame' | 'cone', SpeakerField[]> {
  return { frame: sides(speaker, 'frame', inches), cone: sides(speaker, 'cone', inches) };
}

/** The figures that belong to the parts of a section, from its top to its foot on either side. */
export function sectionFields(
  speaker: BenchSpeaker,
  inches: boolean
): Record<'left' | 'right', SpeakerField[]> {
  const { motor } = speaker;
  const value = (
    part: SpeakerPart,
    label: string,
    unit: string,
    key: keyof Motor,
    factor: number
  ): SpeakerField =>
    field(part, label, unit, motor && motor[key] * factor, (typed) => ({
      ...speaker,
      // Asked of a speaker with a motor only: the others get theirs as a whole.
      motor: motor && { ...motor, [key]: typed / factor }
    }));
  return {
    left: [
      ...(motor
        ? [
            lengthField('travel', 'largest excursion', inches, motor.xmax, (xmax) => ({
              ...speaker,
              motor: { ...motor, xmax }
            })),
            value('mass', 'moving mass', 'g', 'mms', 1e3)
          ]
        : []),
      field('body', 'volume of its body', 'cm³', speaker.bodyVolume * 1e6, (typed) => ({
        ...speaker,
        bodyVolume: typed / 1e6
      })),
      lengthField('depth', 'depth', inches, speaker.depth, (depth) => ({ ...speaker, depth }))
    ],
    right: motor
      ? [
          value('surround', 'compliance', 'mm/N', 'cms', 1e3),
          value('friction', 'mechanical Q', '', 'qms', 1),
          value('coil', 'coil resistance', 'Ω', 're', 1),
          value('heat', 'rated power', 'W', 'ratedPower', 1),
          value('magnet', 'force factor', 'T·m', 'bl', 1)
        ]
      : []
  };
}

/** Enters what was typed for a figure: the speaker with it, or one sentence. */
export function typedInto(
  { label, from, with: make }: Pick<SpeakerField, 'label' | 'from' | 'with'>,
  typed: string,
  put: (speaker: BenchSpeaker, what: string) => string | null
): string | null {
  const number = from(typed);
  return Number.isNaN(number) ? `${label} must be a number` : put(make(number), label);
}
