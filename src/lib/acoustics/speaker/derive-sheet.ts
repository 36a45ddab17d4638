import {
  dot,
  isDetermined,
  whatIsDetermined,
  type LinearEquation
} from '../../numeric/what-is-determined.js';
import type { Air } from '../air.js';
import {
  Q_SUM,
  SHEET_FIGURES,
  SHEET_RELATIONS,
  type Sheet,
  type SheetFigure,
  type SheetRelation
} from './sheet-relations.js';

/** What follows from some figures of a speaker. */
export interface DerivedSheet {
  /** All figures that are determined, those that were given among them. */
  known: Sheet;
  /** How many more figures would determine the speaker. */
  lacking: number;
  /** No speaker has these figures: its total Q would not be below its mechanical and its electrical one. */
  impossible: boolean;
}

/** By which relations figures are derived. */
export interface Relations {
  products: readonly SheetRelation[];
  /** Whether 1/Qts = 1/Qms + 1/Qes is one of them. */
  qSum: boolean;
}

export const ALL_RELATIONS: Relations = { products: SHEET_RELATIONS, qSum: true };

/** How far from 1 the shares of Q may sum up where one more figure tells which of two speakers it is. */
const OF_TWO = 0.05;

const COUNT = SHEET_FIGURES.length;

/**
 * Everything that follows from some figures of a speaker, whichever they are, even where no formula alone gives it. In logarithms products of
 * powers are linear equations; of the sum of the three Qs it is enough to know one combination of Qts/Qms and Qts/Qes. Where two speakers
 * have the figures, they do not count as determined.
 *
 * @param given figures above 0 of which none follows from the others (`readSheet` sees to it)
 */
export function deriveSheet(given: Sheet, air: Air, by: Relations = ALL_RELATIONS): DerivedSheet {
  const equations = [
    ...SHEET_FIGURES.filter((figure) => given[figure] !== undefined).map((figure) => ({
      coefficients: combination({ [figure]: 1 }),
      value: Math.log(given[figure]!)
    })),
    ...by.products.map(({ powers, product }) => ({
      coefficients: combination(powers),
      value: Math.log(product(air))
    }))
  ];
  const shares = by.qSum ? sharesOfQ(equations) : 'open';
  if (shares === 'impossible') return { known: { ...given }, lacking: 0, impossible: true };
  const summed = typeof shares === 'string' ? equations : [...equations, ...shares];
  const solutions = whatIsDetermined(summed, COUNT);
  const known: Sheet = {};
  SHEET_FIGURES.forEach((figure, i) => {
    if (isDetermined(combination({ [figure]: 1 }), solutions)) known[figure] = Math.exp(solutions.one[i]);
  });
  const lacking =
    shares === 'two'
      ? Math.max(1, solutions.open.length - 1)
      : solutions.open.length - (by.qSum && shares === 'open' ? 1 : 0);
  return { known: { ...known, ...given }, lacking, impossible: false };
}

/**
 * Qts/Qms and Qts/Qes, whose sum is 1, as two more equations: where some combination α·ln(Qts/Qms) + β·ln(Qts/Qes) follows from the
 * others. Otherwise why there are none: it is open, two speakers have it (α and β of one sign), or none can.
 */
function sharesOfQ(equations: readonly LinearEquation[]): LinearEquation[] | 'open' | 'two' | 'impossible' {
  const solutions = whatIsDetermined(equations, COUNT);
  const [friction, motor] = [combination({ qts: 1, qms: -1 }), combination({ qts: 1, qes: -1 })];
  const [a, b] = [friction, motor].map((share) => solutions.open.map((basis) => dot(share, basis)));
  if ([friction, motor].every((share) => isDetermined(share, solutions))) {
    const sum = Math.exp(dot(friction, solutions.one)) + Math.exp(dot(motor, solutions.one));
    return Math.abs(sum - 1) > OF_TWO ? 'impossible' : [];
  }
  const [alpha, beta] = leastCombination(a, b);
  const mixed = friction.map((x, i) => alpha * x + beta * motor[i]);
  if (!isDetermined(mixed, solutions)) return 'open';
  if (alpha * beta > 0) return 'two';
  const value = dot(mixed, solutions.one);
  const logit = logitOf(alpha, beta, value);
  if (logit === null) return 'impossible';
  return [
    { coefficients: friction, value: -Math.log1p(Math.exp(-logit)) },
    { coefficients: motor, value: -Math.log1p(Math.exp(logit)) }
  ];
}

/** α and β, the larger of them 1 or −1, for which α·a + β·b is as near to 0 as one component of them says. */
function leastCombination(a: readonly number[], b: readonly number[]): [number, number] {
  const size = (v: readonly number[]) => Math.max(0, ...v.map(Math.abs));
  if (size(a) < 1e-9) return [1, 0];
  if (size(b) < 1e-9) return [0, 1];
  const at = a.findIndex((x) => Math.abs(x) === size(a));
  return Math.abs(b[at]) <= Math.abs(a[at]) ? [-b[at] / a[at], 1] : [1, -a[at] / b[at]];
}

/** ln(s/(1 − s)) of the share s for which α·ln s + β·ln(1 − s) has a value, α and β of different signs; null where no share has it. */
function logitOf(alpha: number, beta: number, value: number): number | null {
  const at = (logit: number): number =>
    -alpha * Math.log1p(Math.exp(-logit)) - beta * Math.log1p(Math.exp(logit)) - value;
  let [low, high] = [-80, 80];
  if (at(low) * at(high) > 0) return null;
  const rising = at(high) > 0;
  for (let i = 0; i < 100; i++) {
    const middle = (low + high) / 2;
    if (at(middle) > 0 === rising) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

function combination(powers: Sheet): number[] {
  return SHEET_FIGURES.map((figure: SheetFigure) => powers[figure] ?? 0);
}

/** The formulas of some relations, as they are written. */
export function formulasOf({ products, qSum }: Relations): string[] {
  return [...products.map(({ formula }) => formula), ...(qSum ? [Q_SUM] : [])];
}
