import { expect, test } from 'vitest';
import { checkSpeaker } from '../../../../src/lib/acoustics/mounts/check-installation.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import type { BenchSpeaker } from '../../../../src/lib/file/bench-file.js';
import { frontFields, sectionFields, typedInto } from '../../../../src/lib/screens/speaker/speaker-fields.js';

function fieldsOf(speaker: BenchSpeaker, inches = false) {
  const [section, front] = [sectionFields(speaker, inches), frontFields(speaker, inches)];
  return [...section.left, ...section.right, ...front.frame, ...front.cone];
}

test('every value of a speaker has its field, and each field its own part', () => {
  const fields = fieldsOf(SPEAKERS.oval);
  expect(
    Object.fromEntries(fields.map(({ label, figure, unit }) => [label, `${figure} ${unit}`.trim()]))
  ).toEqual({
    'largest excursion': '0.8 mm',
    'moving mass': '0.55 g',
    'volume of its body': '6.72 cm³',
    depth: '12 mm',
    compliance: '0.38 mm/N',
    'mechanical Q': '3',
    'coil resistance': '7.2 Ω',
    'rated power': '2 W',
    'force factor': '1.6 T·m',
    'frame length': '40 mm',
    'frame width': '28 mm',
    'cone length': '34 mm',
    'cone width': '22.5 mm'
  });
  expect(new Set(fields.map(({ part }) => part)).size).toBe(fields.length);
});

test('the figure that is shown, typed again, changes nothing beyond its four digits', () => {
  for (const inches of [false, true])
    for (const speaker of Object.values(SPEAKERS))
      for (const field of fieldsOf(speaker, inches)) {
        const same = field.with(field.from(field.figure));
        checkSpeaker({ ...same, motor: same.motor! });
        expect(fieldsOf(same, inches).map(({ figure }) => figure)).toEqual(
          fieldsOf(speaker, inches).map(({ figure }) => figure)
        );
      }
});

test('lengths are in inches where the bench shows them so, and typed in any unit; the rest stays', () => {
  const of = (speaker: BenchSpeaker, label: string) =>
    fieldsOf(speaker, true).find((field) => field.label === label)!;
  const shown = (label: string) => `${of(SPEAKERS.oval, label).figure} ${of(SPEAKERS.oval, label).unit}`;
  expect(['frame length', 'cone width', 'depth', 'largest excursion', 'moving mass'].map(shown)).toEqual([
    '1.575 in',
    '0.8858 in',
    '0.4724 in',
    '0.0315 in',
    '0.55 g'
  ]);
  const frame = of(SPEAKERS.oval, 'frame length');
  for (const [typed, length] of [
    ['1 9/16', 0.0396875],
    ['1.5', 0.0381],
    ['41 mm', 0.041]
  ] as const)
    expect(frame.with(frame.from(typed)).frame).toMatchObject({ length });
});

test('a round speaker has diameters; one without motor values has its sizes alone', () => {
  expect(fieldsOf(SPEAKERS['round-28']).map(({ label }) => label)).toEqual(
    expect.arrayContaining(['frame diameter', 'cone diameter'])
  );
  const { motor, ...bare } = SPEAKERS.oval;
  expect(motor).toBeDefined();
  expect(fieldsOf(bare).map(({ label }) => label)).toEqual([
    'volume of its body',
    'depth',
    'frame length',
    'frame width',
    'cone length',
    'cone width'
  ]);
});

test('what is typed is put, or refused in one sentence', () => {
  const field = fieldsOf(SPEAKERS.oval).find(({ label }) => label === 'moving mass')!;
  let put: BenchSpeaker | null = null;
  const take = (speaker: BenchSpeaker, what: string) => {
    expect(what).toBe('moving mass');
    put = speaker;
    return null;
  };
  expect(typedInto(field, 'much', take)).toBe('moving mass must be a number');
  expect(put).toBe(null);
  expect(typedInto(field, '0,6', take)).toBe(null);
  expect(put!.motor!.mms).toBe(0.0006);
});
