import type { FitLine } from '../../bench/fit/fit-run.svelte.js';
import type { MeasureName } from '../../evaluation/fit/ranking.js';
import type { Limit } from '../../evaluation/limits.js';
import type { ChangeName } from '../../fitting/small-changes.js';
import type { Way } from '../../fitting/ways.js';
import { frequencyWords } from '../../format/frequency-words.js';
import { inDigits } from '../../format/in-digits.js';

/** What one asks for. */
export const MEASURE_WORDS: Readonly<Record<MeasureName, string>> = {
  level: 'more of this engine',
  deep: 'deeper',
  even: 'more even in colour',
  space: 'least space',
  price: 'cheapest',
  loudest: 'loudest within its limits'
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
        : `at most ${loudest.levelDb.toFixed(1)} dB, by ${LIMIT_WORDS[loudest.limit]}`;
  }
}

/** The ways of mounting, as one says of what does not fit there. */
export const WAY_WORDS: Readonly<Record<Way, string>> = {
  roof: 'in the roof',
  'roof box': 'in a box under the roof',
  'box up': 'in a box inside the body',
  'box down': 'in a box that looks down',
  floor: 'in the floor'
};

export const CHANGE_WORDS: Readonly<Record<ChangeName, string>> = {
  length: '1 mm longer',
  width: '1 mm wider',
  height: '1 mm higher',
  depth: '1 mm deeper',
  place: '1 mm off its place',
  'over the board': '1 mm higher over the board',
  gap: 'a gap of 0.1 mm round the frame',
  'resonance up': 'resonance 15 % higher',
  'resonance down': 'resonance 15 % lower'
};

/** How far a small change moves a measure, in decibels or octaves, and in words. */
export function changeOf(
  now: FitLine['measures'],
  then: FitLine['measures'],
  by: MeasureName
): { size: number; words: string } {
  if (by === 'deep') {
    if (now.reachesDown === null || then.reachesDown === null) return { size: 0, words: 'no figure' };
    const octaves = Math.log2(now.reachesDown / then.reachesDown);
    const percent = Math.round(100 * (then.reachesDown / now.reachesDown - 1));
    // an octave is worth 12 dB of level
    const size = 12 * Math.abs(octaves);
    return {
      size,
      words:
        percent === 0 ? 'nothing' : `reaches ${Math.abs(percent)} % ${percent < 0 ? 'lower' : 'less low'}`
    };
  }
  const db = by === 'even' ? then.unevennessDb - now.unevennessDb : then.levelDb - now.levelDb;
  const figure = Math.abs(db).toFixed(1);
  const more = by === 'even' ? ['more uneven', 'more even'] : ['louder', 'softer'];
  return {
    size: Math.abs(db),
    words: figure === '0.0' ? 'nothing' : `${figure} dB ${db > 0 ? more[0] : more[1]}`
  };
}
