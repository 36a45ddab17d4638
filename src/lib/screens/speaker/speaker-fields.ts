import { outlineLength, outlineWidth, type Outline } from '../../acoustics/outline.js';
import type { Motor } from '../../acoustics/speaker/speaker.js';
import type { SpeakerPart } from '../../drawing/speaker-drawing.js';
import type { BenchSpeaker } from '../../file/bench-file.js';
import { inDigits } from '../../format/in-digits.js';
import { numberFrom } from '../../format/number-from.js';

/** One figure of a speaker: what it is called, the part that it belongs to, how it is shown, and the speaker with another one. */
export interface SpeakerField {
  part: SpeakerPart;
  label: string;
  unit: string;
  figure: string;
  with: (value: number) => BenchSpeaker;
}

function field(
  part: SpeakerPart,
  label: string,
  unit: string,
  shown: number | undefined,
  make: SpeakerField['with']
): SpeakerField {
  return { part, label, unit, figure: shown === undefined ? '' : inDigits(shown, 4), with: make };
}

function sides(speaker: BenchSpeaker, what: 'frame' | 'cone'): SpeakerField[] {
  const outline = speaker[what];
  const one = (part: SpeakerPart, label: string, shown: number, make: (metres: number) => Outline) =>
    field(part, `${what} ${label}`, 'mm', shown * 1000, (value) => ({
      ...speaker,
      [what]: make(value / 1000)
    }));
  if (outline.shape === 'round')
    return [one(`${what}Length`, 'diameter', outline.diameter, (diameter) => ({ ...outline, diameter }))];
  return [
    one(`${what}Length`, 'length', outlineLength(outline), (length) => ({ ...outline, length })),
    one(`${what}Width`, 'width', outlineWidth(outline), (width) => ({ ...outline, width }))
  ];
}

/** The sizes that a view from the front shows. */
export function frontFields(speaker: BenchSpeaker): Record<'frame' | 'cone', SpeakerField[]> {
  return { frame: sides(speaker, 'frame'), cone: sides(speaker, 'cone') };
}

/** The figures that belong to the parts of a section, from its top to its foot on either side. */
export function sectionFields(speaker: BenchSpeaker): Record<'left' | 'right', SpeakerField[]> {
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
            value('travel', 'largest excursion', 'mm', 'xmax', 1e3),
            value('mass', 'moving mass', 'g', 'mms', 1e3)
          ]
        : []),
      field('body', 'volume of its body', 'cm³', speaker.bodyVolume * 1e6, (typed) => ({
        ...speaker,
        bodyVolume: typed / 1e6
      })),
      field('depth', 'depth', 'mm', speaker.depth * 1000, (typed) => ({ ...speaker, depth: typed / 1000 }))
    ],
    right: motor
      ? [
          value('surround', 'compliance', 'mm/N', 'cms', 1e3),
          value('friction', 'mechanical Q', '', 'qms', 1),
          value('coil', 'coil resistance', 'Ω', 're', 1),
          value('heat', 'rated power', 'W', 'ratedPower', 1),
          value('magnet', 'force factor', 'N/A', 'bl', 1)
        ]
      : []
  };
}

/** Enters what was typed for a figure: the speaker with it, or one sentence. */
export function typedInto(
  { label, with: make }: Pick<SpeakerField, 'label' | 'with'>,
  typed: string,
  put: (speaker: BenchSpeaker, what: string) => string | null
): string | null {
  const number = numberFrom(typed);
  return Number.isNaN(number) ? `${label} must be a number` : put(make(number), label);
}
