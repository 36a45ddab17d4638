import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { motorFigures } from '../../../../src/lib/acoustics/speaker/motor-figures.js';
import { readSheet } from '../../../../src/lib/acoustics/speaker/read-sheet.js';
import { sensitivity } from '../../../../src/lib/acoustics/speaker/sensitivity.js';
import {
  SHEET_FIGURES,
  type Sheet,
  type SheetFigure
} from '../../../../src/lib/acoustics/speaker/sheet-relations.js';
import type { Motor } from '../../../../src/lib/acoustics/speaker/speaker.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { close } from '../../../helpers/close.js';
import { AIR } from '../../../helpers/demo-installations.js';

/** The whole sheet of a speaker, by the functions that the rest of the house computes with. */
function sheetOf({ mms, cms, bl, re, qms }: Omit<Motor, 'xmax' | 'ratedPower'>, sd: number): Required<Sheet> {
  const motor = { mms, cms, bl, re, qms, xmax: 1e-3, ratedPower: 1 };
  const { fs, qes, qts, vas } = motorFigures(motor, sd, AIR);
  // A square cone of that area.
  const cone = { shape: 'rectangle', length: Math.sqrt(sd), width: Math.sqrt(sd) } as const;
  const perVolt = sensitivity({ motor, cone }, AIR);
  const rms = Math.sqrt(mms / cms) / qms;
  return {
    ...{ re, fs, qms, qes, qts, sd, mms, bl, cms, vas, rms },
    ...{ sensitivity: perVolt, sensitivityPerWatt: perVolt * Math.sqrt(re) }
  };
}

function some(sheet: Sheet, figures: readonly SheetFigure[]): Sheet {
  return Object.fromEntries(figures.map((figure) => [figure, sheet[figure]]));
}

const between = (least: number, most: number) =>
  fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map(Math.exp);

const anySpeaker = fc
  .record({
    mms: between(2e-5, 0.05),
    cms: between(1e-5, 5e-3),
    bl: between(0.2, 20),
    re: between(2, 60),
    qms: between(0.5, 20),
    sd: between(2e-5, 0.02)
  })
  .map(({ sd, ...motor }) => sheetOf(motor, sd));

/**
 * How many figures of a speaker are independent of each other, by moving its six motor values and looking at what becomes of the
 * figures: another way than the equations of `deriveSheet`.
 */
function rank(figures: readonly SheetFigure[]): number {
  const at = [0.00055, 0.00038, 1.6, 7.2, 3, 6e-4];
  const logs = (values: number[]) => {
    const [mms, cms, bl, re, qms, sd] = values;
    const sheet = sheetOf({ mms, cms, bl, re, qms }, sd);
    return figures.map((figure) => Math.log(sheet[figure]));
  };
  const columns = at.map((value, i) => {
    const [up, down] = [1e-4, -1e-4].map((by) => logs(at.with(i, value * Math.exp(by))));
    return up.map((x, k) => (x - down[k]) / 2e-4);
  });
  let found = 0;
  for (const column of columns) {
    const pivot = column.findIndex((x) => Math.abs(x) === Math.max(...column.map(Math.abs)));
    if (pivot < 0 || Math.abs(column[pivot]) < 1e-5) continue;
    found++;
    for (const other of columns.slice(columns.indexOf(column) + 1)) {
      const factor = other[pivot] / column[pivot];
      column.forEach((x, k) => (other[k] -= factor * x));
    }
  }
  return found;
}

describe('readSheet', () => {
  it('the oval’s sheet by hand: resonance, two Qs, equivalent volume, coil and cone give its motor', () => {
    const { known, lacking, contradictions } = readSheet(
      { fs: 348.13, qms: 3, qts: 1.5901, vas: 19.4e-6, re: 7.2, sd: 6e-4 },
      AIR
    );
    expect([lacking, contradictions]).toEqual([0, []]);
    close(known.cms! * 1e3, 0.38, {
      rel: 1e-3,
      because: 'Vas = 1.204 · 343.2² · 3.6e-7 · Cms, in four digits'
    });
    close(known.mms! * 1e3, 0.55, { rel: 1e-3, because: '(2π·fs)² · Mms · Cms = 1' });
    close(known.bl!, 1.6, { rel: 1e-3, because: 'Qes = 3.3836 = √(Mms/Cms) · Re/Bl²' });
  });

  it('from any speaker, every subset that says it all gives it back, and every other one says how much is missing', () => {
    let [whole, twofold] = [0, 0];
    fc.assert(
      fc.property(anySpeaker, fc.subarray([...SHEET_FIGURES], { minLength: 4 }), (sheet, figures) => {
        const { known, lacking, wanted, agreeing, contradictions } = readSheet(some(sheet, figures), AIR);
        expect(contradictions).toEqual([]);
        for (const figure of SHEET_FIGURES)
          if (known[figure] !== undefined)
            close(known[figure], sheet[figure], { rel: 1e-6, because: `${figure} of the same speaker` });
        // A seventh can be needed, to tell which of two speakers it is.
        expect(figures.length - agreeing.length).toBeLessThanOrEqual(7);
        expect(lacking === 0).toBe(wanted.length === 0);
        const missing = 6 - rank(figures);
        if (missing > 0) expect(lacking).toBe(missing);
        else if (lacking === 0) whole++;
        else {
          // Two speakers have these: the total Q and the friction are known, but neither of the other two Qs.
          expect(figures).toEqual(expect.arrayContaining(['qts', 'rms']));
          expect(lacking).toBe(1);
          twofold++;
        }
      }),
      { numRuns: 1200 }
    );
    expect(whole).toBeGreaterThan(300);
    expect(twofold).toBeLessThan(50);
  });

  it('two speakers can have the same total Q, friction, coil, resonance, cone and sensitivity: one more figure decides', () => {
    const figures = ['re', 'fs', 'qts', 'sd', 'rms', 'sensitivity'] as const;
    const one = sheetOf(SPEAKERS.oval.motor, 6e-4);
    // Its two Qs the other way round, on a cone as much heavier as leaves the friction what it is.
    const heavier = one.qes / one.qms;
    const bl = SPEAKERS.oval.motor.bl * heavier;
    const other = sheetOf(
      { re: one.re, qms: one.qes, mms: one.mms * heavier, cms: one.cms / heavier, bl },
      6e-4
    );
    for (const figure of figures)
      close(other[figure], one[figure], { rel: 1e-9, because: `${figure} is that of the other one` });
    for (const sheet of [one, other]) {
      const { lacking, wanted } = readSheet(some(sheet, figures), AIR);
      expect(lacking).toBe(1);
      expect(wanted).toEqual(expect.arrayContaining(['mms', 'bl', 'qms', 'qes']));
      const { known } = readSheet(some(sheet, [...figures, 'mms']), AIR);
      close(known.qms!, sheet.qms, { rel: 1e-6, because: 'the mass tells which of the two it is' });
    }
  });

  it('four figures: says what follows, how many more it takes, and which', () => {
    const { known, lacking, wanted } = readSheet({ fs: 350, qts: 1.6, vas: 19e-6, sd: 6e-4 }, AIR);
    close(known.cms!, 19e-6 / (1.204 * 343.2 ** 2 * 3.6e-7), { rel: 1e-9, because: 'Cms = Vas/(ρ·c²·Sd²)' });
    close(known.mms!, 1 / ((2 * Math.PI * 350) ** 2 * known.cms!), {
      rel: 1e-9,
      because: 'Mms from fs and Cms'
    });
    expect(lacking).toBe(2);
    expect(wanted).toEqual(['re', 'qms', 'qes', 'bl', 'rms', 'sensitivity', 'sensitivityPerWatt']);
  });

  it('names the formula by which figures contradict each other, the figures and how far they are apart', () => {
    const [check, ...more] = readSheet({ fs: 410, mms: 0.55e-3, cms: 0.38e-3 }, AIR).contradictions;
    expect(more).toEqual([]);
    expect(check).toMatchObject({
      figure: 'cms',
      from: ['fs', 'mms'],
      formulas: ['fs = 1/(2π·√(Mms·Cms))']
    });
    close(check.given / check.derived!, (410 / 348.13) ** 2, {
      rel: 1e-4,
      because: 'Cms goes with 1/fs²; 348.13 Hz by hand'
    });
  });

  it('names several formulas where one does not do: fs, Vas, Qes and the sensitivity for 1 W (Small’s reference efficiency)', () => {
    const { fs, vas, qes, sensitivityPerWatt } = sheetOf(SPEAKERS.oval.motor, 6e-4);
    // p² for 1 W in half-space is ρ·c/(2π)·η₀, η₀ = 4π²/c³·fs³·Vas/Qes (Small 1972, eq. 50; number from memory).
    const efficiency = ((4 * Math.PI ** 2) / 343.2 ** 3) * fs ** 3 * (vas / qes);
    close(sensitivityPerWatt, Math.sqrt((1.204 * 343.2 * efficiency) / (2 * Math.PI)), {
      rel: 1e-9,
      because: 'the identity'
    });
    const [check] = readSheet(
      { fs, vas, qes, sensitivityPerWatt: 2 * sensitivityPerWatt },
      AIR
    ).contradictions;
    expect(check).toMatchObject({
      figure: 'sensitivityPerWatt',
      from: ['fs', 'qes', 'vas']
    });
    close(check.given / check.derived!, 2, {
      rel: 1e-9,
      because: 'it is twice as high as the others make it'
    });
    expect(check.formulas).toHaveLength(5);
  });

  it('tolerates what rounding does: 5 %, and 2 dB of a sensitivity', () => {
    const whole = sheetOf(SPEAKERS.oval.motor, 6e-4);
    const contradicts = (part: Sheet) =>
      readSheet({ ...whole, ...part }, AIR).contradictions.map(({ figure }) => figure);
    expect(contradicts({})).toEqual([]);
    expect(contradicts({ vas: whole.vas * 1.049 })).toEqual([]);
    expect(contradicts({ vas: whole.vas * 1.051 })).toEqual(['vas']);
    expect(contradicts({ vas: whole.vas / 1.051 })).toEqual(['vas']);
    expect(contradicts({ sensitivity: whole.sensitivity * 10 ** (1.9 / 20) })).toEqual([]);
    expect(contradicts({ sensitivity: whole.sensitivity / 10 ** (2.1 / 20) })).toEqual(['sensitivity']);
  });

  it('a total Q that is not below the mechanical one is no speaker’s: it is named and not used', () => {
    const { known, contradictions, lacking } = readSheet({ fs: 350, qms: 3, qts: 4 }, AIR);
    expect(contradictions).toEqual([
      {
        figure: 'qts',
        given: 4,
        derived: null,
        from: ['qms'],
        formulas: ['1/Qts = 1/Qms + 1/Qes']
      }
    ]);
    expect(known).toEqual({ fs: 350, qms: 3 });
    expect(lacking).toBe(4);
  });

  it('refuses what is not above 0 in one sentence', () => {
    for (const value of [0, -1, NaN, Infinity])
      expect(() => readSheet({ mms: value }, AIR)).toThrow(`moving mass must be above 0, got ${value}`);
  });

  it('reads an empty sheet: six figures are missing', () => {
    expect(readSheet({}, AIR)).toMatchObject({
      known: {},
      contradictions: [],
      lacking: 6,
      wanted: SHEET_FIGURES
    });
  });
});
