import type { CubicMetres, Decibels } from '../../units.js';
import type { AccuracyName } from '../../waves/mesh/accuracy.js';
import type { Loudest, Measures } from './measures.js';

/** What one can ask for. */
export const MEASURE_NAMES = ['level', 'deep', 'even', 'space', 'price', 'loudest'] as const;
export type MeasureName = (typeof MEASURE_NAMES)[number];

/** A candidate with what is known of it. */
export interface Measured {
  /** Of the candidate. */
  key: string;
  accuracy: AccuracyName;
  measures: Measures;
  space: CubicMetres;
  /** In whatever money; null where the price of the speaker is not told. */
  price: number | null;
  /** Null until it is measured, or where the sounds are silent. */
  loudest: Loudest | null;
}

/** A place in the ranking. */
export interface Ranked<Line extends Measured> {
  line: Line;
  /** From 1; lines that are tied have the same. */
  place: number;
  /** Whether another line has the same place. */
  tied: boolean;
}

/** The stated error of the level of the wave solution (docs/models/wave-solution.md). */
const ERROR: Readonly<Record<AccuracyName, Decibels>> = { draft: 0.6, full: 0.3 };
/** How fast small speakers fall off below their resonance, in dB an octave: by it a level becomes a depth, and its error one in depth. */
export const FALL: Decibels = 12;

interface Measure {
  /** The larger the better; null where it cannot be told, which is behind everything. */
  merit: (line: Measured) => number | null;
  /** By how much two may differ and still be told to be alike. */
  alike: (a: Measured, b: Measured) => number;
}

const bothErrors = (a: Measured, b: Measured): Decibels => ERROR[a.accuracy] + ERROR[b.accuracy];

const MEASURES: Readonly<Record<MeasureName, Measure>> = {
  level: { merit: ({ measures }) => finite(measures.levelDb), alike: bothErrors },
  deep: {
    // in octaves down
    merit: ({ measures }) => measures.reachesDown && -Math.log2(measures.reachesDown),
    alike: (a, b) => bothErrors(a, b) / FALL
  },
  even: { merit: ({ measures }) => -measures.unevennessDb, alike: bothErrors },
  space: { merit: ({ space }) => -space, alike: () => 1e-9 },
  price: { merit: ({ price }) => price && -price, alike: () => 1e-9 },
  loudest: { merit: ({ loudest }) => loudest && finite(loudest.levelDb), alike: bothErrors }
};

/**
 * The lines in the order of one measure, the best first. Lines that differ from the best of their place by no more than the errors of both are tied
 * with it. Lines that are equal stand in the order of their keys.
 */
export function ranked<Line extends Measured>(lines: readonly Line[], by: MeasureName): Ranked<Line>[] {
  const { merit, alike } = MEASURES[by];
  const merits = new Map(lines.map((line) => [line, merit(line) ?? -Infinity]));
  const order = [...lines].sort(
    (a, b) => merits.get(b)! - merits.get(a)! || (a.key < b.key ? -1 : a.key > b.key ? 1 : 0)
  );
  const places: { line: Line; place: number }[] = [];
  let first = 0;
  order.forEach((line, i) => {
    const lead = order[first];
    const behind = merits.get(lead)! - merits.get(line)!;
    // two that cannot be told: −∞ less −∞ is no number
    if (behind > alike(lead, line)) first = i;
    places.push({ line, place: first + 1 });
  });
  return places.map((one) => ({
    ...one,
    tied: places.some((other) => other !== one && other.place === one.place)
  }));
}

/** Whether two lines differ in a measure by no more than the errors of both, or cannot be told. */
export function isTie(a: Measured, b: Measured, by: MeasureName): boolean {
  const { merit, alike } = MEASURES[by];
  const [one, other] = [merit(a), merit(b)];
  if (one === null || other === null) return one === other;
  return Math.abs(one - other) <= alike(a, b);
}

function finite(level: number): number | null {
  return Number.isFinite(level) ? level : null;
}
