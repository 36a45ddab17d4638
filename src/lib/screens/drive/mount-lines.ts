import { outsideSize, type OutsideSize } from '../../acoustics/mounts/outside-size.js';
import { type Price, priceOf } from '../../evaluation/price.js';
import type { Stand } from '../../evaluation/stand.js';
import type { BenchFile } from '../../file/bench-file.js';
import { inDigits } from '../../format/in-digits.js';
import { lengthFigure, lengthWords } from '../../format/length-words.js';
import { louderOrQuieter } from '../../format/louder-or-quieter.js';
import type { Decibels } from '../../units.js';

/** One mount beside the others: how loud, how large, how dear. */
export interface MountLine {
  /** In dB re 20 µPa where one listens; a dash where that is not known. */
  here: string;
  /** Beside the mount that levels are written against; nothing where that is not known. */
  than: string;
  outside: string;
  taken: string;
  /** Nothing where no price is told. */
  price: string;
}

/** What is known of one mount; null is not known. */
export interface Known {
  levelDb: Decibels | null;
  differenceDb: Decibels | null;
  isAgainst: boolean;
}

export function mountLine(
  file: Pick<BenchFile, 'speakers' | 'view'>,
  { setup, installation, problem }: Pick<Stand, 'setup' | 'installation' | 'problem'>,
  { levelDb, differenceDb, isAgainst }: Known
): MountLine {
  const size = problem ? null : outsideSize(installation, setup.wall);
  return {
    here: levelDb === null || !Number.isFinite(levelDb) ? '–' : `${Math.round(levelDb)} dB`,
    than: isAgainst
      ? 'to compare with'
      : differenceDb === null
        ? ''
        : `${louderOrQuieter(differenceDb)} to the ear`,
    outside: size ? outsideWords(size, file.view.inches) : '',
    taken: size ? `takes ${inDigits(size.taken * 1e6, 2)} cm³` : '',
    price: priceWords(priceOf(file, setup))
  };
}

function outsideWords({ length, width, height }: OutsideSize, inches: boolean): string {
  return `${lengthFigure(length, inches)} × ${lengthFigure(width, inches)} × ${lengthWords(height, inches)}`;
}

function priceWords(price: Price | null): string {
  if (!price) return '';
  const { speakers, mount } = price;
  const figure = (value: number): string => String(Number(value.toFixed(2)));
  return mount === 0
    ? `costs ${figure(speakers)}`
    : `costs ${figure(speakers)} + ${figure(mount)} = ${figure(speakers + mount)}`;
}
