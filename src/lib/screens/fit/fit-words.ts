import type { FitLine } from '../../bench/fit/fit-run.svelte.js';
import type { Figures } from '../../bench/fit/what-matters.js';
import { mm } from '../../acoustics/limits.js';
import { FALL, type MeasureName, type Ranked } from '../../evaluation/fit/ranking.js';
import type { Limit } from '../../evaluation/limits.js';
import type { Candidate } from '../../fitting/candidate.js';
import { GAP, OFF, RESONANCE_OFF, type ChangeName } from '../../fitting/small-changes.js';
import { isBoxed, WAYS, type Way } from '../../fitting/ways.js';
import type { Misfit } from '../../fitting/why-not.js';
import { frequencyWords } from '../../format/frequency-words.js';
import { inDigits } from '../../format/in-digits.js';
import type { CubicMetres, Decibels, Hertz } from '../../units.js';

/** What one asks for. */
export const MEASURE_WORDS: Readonly<Record<MeasureName, string>> = {
  level: 'more of this engine',
  deep: 'deeper',
  even: 'more even in colour',
  space: 'least space',
  price: 'cheapest',
  loudest: 'loudest within its limits'
};

/** What each of them is of. */
export const MEASURE_TELLS: Readonly<Record<MeasureName, string>> = {
  level:
    'How loud this engine comes out at the listener, whatever its colour: look at how uneven it is, too.',
  deep: 'How far down it stays within 10 dB of one level, the same for all.',
  even: 'How little its third octaves from 315 Hz to 2.5 kHz differ from each other.',
  space: 'What it takes of the inside of the model.',
  price: 'What its speakers and its mount cost.',
  loudest: 'How loud it can be before its travel, its heat or the amplifier ends it.'
};

const LIMIT_WORDS: Readonly<Record<Limit, string>> = {
  travel: 'its travel',
  heat: 'heat in its coil',
  clipping: 'the amplifier'
};

/** What a line has of a measure, with its subject. */
export function measureWords({ measures, space, price, loudest }: FitLine, by: MeasureName): string {
  switch (by) {
    case 'level':
      return `${measures.levelDb.toFixed(1)} dB loud`;
    case 'deep':
      return measures.reachesDown === null
        ? 'thin throughout'
        : `down to ${frequencyWords(measures.reachesDown)}`;
    case 'even':
      return `uneven by ${measures.unevennessDb.toFixed(1)} dB`;
    case 'space':
      return `takes ${inDigits(space * 1e6, 2)} cm³`;
    case 'price':
      return price === null ? 'no price told' : `costs ${Number(price.toFixed(2))}`;
    case 'loudest':
      return loudest === null
        ? 'limits not measured yet'
        : `at most ${loudest.levelDb.toFixed(1)} dB, by ${LIMIT_WORDS[loudest.limit]}${
            loudest.levelDb < measures.levelDb ? ': it cannot take this voltage' : ''
          }`;
  }
}

/** Where a box lies, along the model; the name of what lies in the roof says it. Null where it is the body itself. */
export function placeWords({ way, takes }: Pick<Candidate, 'way' | 'takes'>): string | null {
  if (!isBoxed(way)) return null;
  const [from, until] = takes[0].x.map((x) => Math.round(1e3 * x));
  return `${from} to ${until} mm from the left`;
}

/**
 * Of lines that differ by the size of their box alone the best, in their order, with places of their own, each with how many others there are.
 *
 * @param ladders keys of the sizes of each place; one that is in several counts to the first (`fit`)
 */
export function bestSizes(
  ranking: readonly Ranked<FitLine>[],
  ladders: readonly (readonly string[])[]
): { ranked: Ranked<FitLine>; others: number }[] {
  const placeOf = (key: string): string => {
    const place = ladders.findIndex((ladder) => ladder.includes(key));
    return place < 0 ? key : String(place);
  };
  const best = grouped(ranking, ({ line }) => placeOf(line.key));
  const places = best.map(([{ place }]) => place);
  return best.map(([{ line, place }, ...others]) => ({
    ranked: {
      line,
      place: places.indexOf(place) + 1,
      tied: places.filter((one) => one === place).length > 1
    },
    others: others.length
  }));
}

/** The ways of mounting, as one says of what does not fit there. */
const WAY_WORDS: Readonly<Record<Way, string>> = {
  roof: 'in the roof',
  'roof box': 'in a box under the roof',
  'box up': 'in a box inside the body',
  'box down': 'in a box that looks down',
  floor: 'in the floor'
};

/** Why a speaker does not fit, by speaker; the same reason of several ways is told once. */
export interface MisfitWords {
  /** Key of the speaker. */
  speaker: string;
  /** Where it fits; null where it fits nowhere. */
  fits: string | null;
  reasons: (Pick<Misfit, 'why' | 'remedy'> & { ways: string })[];
}

export function misfitWords(misfits: readonly Misfit[]): MisfitWords[] {
  const reasonOf = ({ why, remedy }: Misfit): string => JSON.stringify([why, remedy]);
  return grouped(misfits, ({ speaker }) => speaker).map((ways) => ({
    speaker: ways[0].speaker,
    fits: whereWords(WAYS.filter((way) => !ways.some((misfit) => misfit.way === way))),
    reasons: grouped(ways, reasonOf).map((same) => ({
      ways: same.map(({ way }) => WAY_WORDS[way]).join(' and '),
      why: same[0].why,
      remedy: same[0].remedy
    }))
  }));
}

function whereWords(ways: readonly Way[]): string | null {
  return ways.length === 0 ? null : ways.map((way) => WAY_WORDS[way]).join(' and ');
}

function grouped<Item>(items: readonly Item[], keyOf: (item: Item) => string): Item[][] {
  const groups = new Map<string, Item[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return [...groups.values()];
}

const OFF_WORDS = `${mm(OFF)} mm`;
const PERCENT = Math.round(100 * RESONANCE_OFF);

export const CHANGE_WORDS: Readonly<Record<ChangeName, string>> = {
  length: `${OFF_WORDS} longer`,
  width: `${OFF_WORDS} wider`,
  height: `${OFF_WORDS} higher`,
  depth: `${OFF_WORDS} deeper`,
  place: `${OFF_WORDS} off its place`,
  'over the board': `${OFF_WORDS} higher over the board`,
  gap: `a gap of ${mm(GAP)} mm round the frame`,
  'resonance up': `resonance ${PERCENT} % higher`,
  'resonance down': `resonance ${PERCENT} % lower`
};

/** What a change must come to, to be worth careful work: below it is written as 0.1 dB or as nothing. */
const IDLE: Decibels = 0.15;

/** What a small change does to a measure: how much, to be told first what does most, whether that is next to nothing, and in words. */
export interface ChangeWords {
  size: number;
  idle: boolean;
  words: string;
}

/** Why a small change is not told in some measure at all; null where it is. */
export function noChangeWords(by: MeasureName): string | null {
  return by === 'price' ? 'A small change of a size does not change the price.' : null;
}

/** How far a small change moves a measure, in decibels (a depth by the level that it is worth) or as space, and in words. */
export function changeOf(now: Figures, then: Figures, by: MeasureName): ChangeWords {
  switch (by) {
    case 'level':
      return changeDb(then.measures.levelDb - now.measures.levelDb, ['louder', 'softer']);
    case 'even':
      return changeDb(then.measures.unevennessDb - now.measures.unevennessDb, ['more uneven', 'more even']);
    case 'loudest':
      if (!now.loudest || !then.loudest) return NO_FIGURE;
      return changeDb(then.loudest.levelDb - now.loudest.levelDb, ['louder at most', 'softer at most']);
    case 'deep':
      return changeOfDepth(now.measures.reachesDown, then.measures.reachesDown);
    case 'space':
      return changeOfSpace(then.space - now.space);
    case 'price':
      return NOTHING;
  }
}

const NOTHING: ChangeWords = { size: 0, idle: true, words: 'nothing' };
const NO_FIGURE: ChangeWords = { size: 0, idle: true, words: 'no figure' };

function changeDb(db: Decibels, [more, less]: readonly [string, string]): ChangeWords {
  const figure = Math.abs(db).toFixed(1);
  if (figure === '0.0') return { ...NOTHING, size: Math.abs(db) };
  return { size: Math.abs(db), idle: Math.abs(db) < IDLE, words: `${figure} dB ${db > 0 ? more : less}` };
}

function changeOfDepth(now: Hertz | null, then: Hertz | null): ChangeWords {
  if (now === null || then === null) return NO_FIGURE;
  const percent = Math.round(100 * (then / now - 1));
  const size = FALL * Math.abs(Math.log2(now / then));
  const words =
    percent === 0 ? 'nothing' : `reaches ${Math.abs(percent)} % ${percent < 0 ? 'lower' : 'less low'}`;
  return { size, idle: size < IDLE, words };
}

function changeOfSpace(more: CubicMetres): ChangeWords {
  const cm3 = Math.abs(more) * 1e6;
  if (cm3 < 0.005) return NOTHING;
  return { size: cm3, idle: false, words: `takes ${inDigits(cm3, 2)} cm³ ${more > 0 ? 'more' : 'less'}` };
}
