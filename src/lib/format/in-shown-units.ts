import { lengthFigure } from './length-words.js';

const NUMBER = String.raw`-?\d+(?:\.\d+)?(?:e[+-]?\d+)?`;
const NUMBERS = new RegExp(NUMBER, 'g');
/** One length or several that share a unit: 25 mm, 28 × 16 mm, 1 … 3000 mm, got 0. */
const LENGTHS = new RegExp(
  String.raw`(${NUMBER}(?: (?:×|…|and) ${NUMBER})*) mm\b(?!/)(, got ${NUMBER})?`,
  'g'
);

/** A sentence whose lengths are in millimetres, as every refused size is told, in the units that are shown. */
export function inShownUnits(sentence: string, inches: boolean): string {
  if (!inches) return sentence;
  const converted = (text: string): string =>
    text.replace(NUMBERS, (number) => lengthFigure(Number(number) / 1000, true));
  return sentence.replace(
    LENGTHS,
    (_, lengths: string, got = '') => `${converted(lengths)} in${converted(got as string)}`
  );
}
