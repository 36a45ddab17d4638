import { describe, expect, it } from 'vitest';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { MEASURE_NAMES, ranked, type Measured } from '../../../../src/lib/evaluation/fit/ranking.js';
import { firstToTry, nextToTry } from '../../../../src/lib/evaluation/fit/sizes-to-try.js';
import { DEMO_MODELS } from '../../../../src/lib/file/demo-vehicles.js';
import type { Candidate } from '../../../../src/lib/fitting/candidate.js';
import { fit } from '../../../../src/lib/fitting/fit.js';
import { random } from '../../../../src/lib/sounds/blocks/random.js';

const FITTED = fit(DEMO_MODELS[0], SPEAKERS);
const NONE: string[] = [];

function lineOf({ key, space }: Candidate, levelDb: number): Measured {
  const measures = { levelDb, reachesDown: 300, unevennessDb: 5 };
  return {
    key,
    space,
    accuracy: 'draft',
    measures,
    price: null,
    loudest: { levelDb, volts: 1, limit: 'heat' }
  };
}

/** Tries by a level until nothing is left that is to be tried. */
function triedBy(levelOf: (candidate: Candidate) => number): Measured[] {
  let lines = firstToTry(FITTED).map((one) => lineOf(one, levelOf(one)));
  for (;;) {
    const next = nextToTry(FITTED, lines, NONE, 'level');
    if (next.length === 0) return lines;
    lines = [...lines, ...next.map((one) => lineOf(one, levelOf(one)))];
  }
}

describe('what is tried first', () => {
  it('is all that is no box, the least and the largest box of every place, and one between in the roomiest', () => {
    const first = new Set(firstToTry(FITTED).map(({ key }) => key));
    for (const { key, way } of FITTED.candidates) if (!way.includes('box')) expect(first.has(key)).toBe(true);
    for (const ladder of FITTED.ladders) {
      expect(first.has(ladder[0])).toBe(true);
      expect(first.has(ladder.at(-1)!)).toBe(true);
    }
    // several times fewer than there are sizes
    expect(first.size).toBeGreaterThan(60);
    expect(3 * first.size).toBeLessThan(FITTED.candidates.length);
  });
});

describe('what is tried next', () => {
  it('goes on until every neighbour on a ladder of what leads is known, and is a small part of all', () => {
    const { uniform } = random(7);
    for (let i = 0; i < 10; i++) {
      // best at some size, and falling on both sides of it
      const best = Math.log(1e-6 + 5e-5 * uniform());
      const lines = triedBy((one) => 60 - 20 * (Math.log(one.space) - best) ** 2);
      const tried = new Set(lines.map(({ key }) => key));
      const lead = ranked(lines, 'level')[0].line;
      for (const ladder of FITTED.ladders) {
        const at = ladder.indexOf(lead.key);
        if (at < 0) continue;
        for (const beside of [ladder[at - 1], ladder[at + 1]])
          if (beside) expect(tried.has(beside)).toBe(true);
      }
      expect(lines.length).toBeLessThan(0.5 * FITTED.candidates.length);
    }
  });

  it('finds the best of a ladder on which a measure has one top, though its ends and its middle are far from it', () => {
    const ladder = FITTED.ladders.reduce((a, b) => (b.length > a.length ? b : a));
    for (const top of [2, Math.floor(ladder.length / 2) - 2, ladder.length - 3]) {
      // all else is far behind; of this one a slope leads to the top
      const lines = triedBy(({ key }) =>
        ladder.includes(key) ? 60 - 0.3 * Math.abs(ladder.indexOf(key) - top) : 0
      );
      const [{ line }] = ranked(lines, 'level');
      expect(ladder.indexOf(line.key)).toBe(top);
    }
  });

  it('is nothing where a larger box is known to be no better, and nothing that could not be worked out is tried again', () => {
    const lines = firstToTry(FITTED).map((one) => lineOf(one, 60));
    const some = (by: (typeof MEASURE_NAMES)[number]) => nextToTry(FITTED, lines, NONE, by).length > 0;
    expect(MEASURE_NAMES.filter(some)).toEqual(['level', 'deep', 'even', 'loudest']);
    const all = FITTED.candidates.map(({ key }) => key);
    expect(nextToTry(FITTED, lines, all, 'level')).toEqual([]);
  });
});
