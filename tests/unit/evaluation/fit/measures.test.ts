import { describe, expect, it } from 'vitest';
import { liftResponse, type Lift } from '../../../../src/lib/acoustics/speaker/lift.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { ruleAnswer } from '../../../../src/lib/evaluation/answer.js';
import {
  loudestOf,
  measuresOf,
  triedSound,
  type TriedWith
} from '../../../../src/lib/evaluation/fit/measures.js';
import { close } from '../../../helpers/close.js';

const RATE = 48000;
const TONE = 100;
const speaker = SPEAKERS.oval;
const air = { temperatureC: 20 };
const listener = { angleDeg: 0, plane: 'width' } as const;
const answer = ruleAnswer(
  { speaker, mount: { kind: 'box', length: 0.05, width: 0.04, depth: 0.03 }, turn: 0 },
  air,
  listener
);
const LIFT: Lift = { gainDb: 12, below: 300 };

/** A sine of 100 Hz and its spectrum; behind a filter it has the peak that the filter's response says. */
const tone = triedSound(
  {
    power: Float64Array.from({ length: RATE / 20 + 1 }, (_, k) => (k * 10 === TONE ? 0.5 : 0)),
    binWidth: 10
  },
  RATE,
  async (filters) => {
    const strained = (peak: number) => ({ peak, meanSquare: peak ** 2 / 2, loudestSecond: peak ** 2 / 2 });
    const gainOf = (filter: Float32Array) => {
      const turn = (2 * Math.PI * TONE) / RATE;
      const sum = (part: (angle: number) => number) =>
        filter.reduce((all, x, n) => all + x * part(turn * n), 0);
      return Math.hypot(sum(Math.cos), sum(Math.sin));
    };
    return { own: strained(1), through: filters.map((filter) => strained(gainOf(filter))) };
  }
);
const triedWithLift = (lift: Lift | null): TriedWith => ({
  ...{ air, listener, sounds: [tone], sampleRate: RATE, volts: 1, lift, against: speaker },
  amplifier: { leastLoad: 4, power: 0.05 }
});

describe('what lifts the low end', () => {
  const { re, im } = liftResponse(LIFT, Float64Array.of(TONE));
  const liftDb = 20 * Math.log10(Math.hypot(re[0], im[0]));
  const [without, lifted] = [null, LIFT].map((lift) => measuresOf(answer, speaker, triedWithLift(lift)));

  it('is in the level and in how far down it reaches, as on the shelf', () => {
    expect(liftDb).toBeGreaterThan(9);
    close(lifted.levelDb - without.levelDb, liftDb, { abs: 1e-6, because: 'one tone' });
    expect(lifted.reachesDown!).toBeLessThan(0.85 * without.reachesDown!);
    expect(lifted.unevennessDb).not.toBe(without.unevennessDb);
  });

  it('gives nothing more at a limit: what it lifts takes as much of the drive', async () => {
    for (const amplifier of [null, triedWithLift(null).amplifier]) {
      const [plain, more] = await Promise.all(
        [null, LIFT].map((lift, i) =>
          loudestOf(answer, [without, lifted][i].levelDb, speaker, { ...triedWithLift(lift), amplifier })
        )
      );
      close(20 * Math.log10(plain!.volts / more!.volts), liftDb, { abs: 0.05, because: 'filters of 1/3 s' });
      close(more!.levelDb, plain!.levelDb, { abs: 0.05, because: 'the same cone at its limit' });
      expect(more!.limit).toBe(plain!.limit);
    }
  });
});
