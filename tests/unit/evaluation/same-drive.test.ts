import { expect, test, vi } from 'vitest';
import { type Lift, liftResponse } from '../../../src/lib/acoustics/speaker/lift.js';
import type { Speaker } from '../../../src/lib/acoustics/speaker/speaker.js';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { Bench } from '../../../src/lib/bench/bench.svelte.js';
import { Levels } from '../../../src/lib/bench/sounding/levels.svelte.js';
import { type Computed, PICTURE_GRID } from '../../../src/lib/evaluation/stand.js';
import { LoopFilter } from '../../../src/lib/numeric/filter-with.js';
import { levelDb } from '../../../src/lib/numeric/level-db.js';
import { answerOf } from '../../../src/lib/evaluation/models.js';
import { harmonicsOf } from '../../../src/lib/evaluation/harmonics.js';
import { powerGain } from '../../../src/lib/evaluation/power-gain.js';
import type { Known } from '../../../src/lib/evaluation/wave-jobs.js';
import type { BenchFile, ModelName } from '../../../src/lib/file/bench-file.js';
import { DEMO_MOUNTS, demoBench } from '../../../src/lib/file/demo-bench.js';
import { installationOf } from '../../../src/lib/file/installation-of.js';
import { loopLoudness } from '../../../src/lib/listening/loudness.js';
import { measureSound } from '../../../src/lib/listening/measure-sound.js';
import { curveOf, frontGround, ruleBeside } from '../../../src/lib/screens/parts/curves/stand-curves.js';
import { lateMarkers } from '../../../src/lib/screens/parts/curves/late-markers.js';
import { FULL } from '../../../src/lib/screens/parts/curves/late-words.js';
import { hearWaves } from '../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../src/lib/waves/wave-solution.js';
import { close } from '../../helpers/close.js';
import { IN_FRONT } from '../../helpers/demo-installations.js';
import { labAtHand } from '../../helpers/lab-at-hand.js';

const RATE = 48000;
const WEAK: Speaker = {
  ...SPEAKERS.oval,
  name: 'weak magnet',
  motor: { ...SPEAKERS.oval.motor, bl: SPEAKERS.oval.motor.bl / 2 }
};

/** A plate with the usual speaker, one with a weakened magnet, free air with another speaker, and a box with the weak one. */
function benchFile(measuredAgainst = 0, model: ModelName = 'rule'): BenchFile {
  const demo = demoBench();
  const setup = (speaker: string, kind: 'free' | 'plate' | 'box') => ({
    ...demo.setups[0],
    speaker,
    mount: DEMO_MOUNTS[kind]
  });
  return {
    ...demo,
    speakers: { oval: SPEAKERS.oval, weak: WEAK, small: SPEAKERS['round-23'] },
    setups: [setup('oval', 'plate'), setup('weak', 'plate'), setup('small', 'free'), setup('weak', 'box')],
    view: { ...demo.view, measuredAgainst, model }
  };
}

/**
 * Level in dB of one mount at 1 V, in free space, computed apart: the mount's own part (the same cone velocity in an endless plate is
 * 0 dB) on the half-space pressure of the speaker with its high-pass, p = ρ·Sd·Bl/(2π·Mms·Re)·|s²/(s² + s·ω0/Q + ω0²)|; in a box with the
 * spring of its air. R. H. Small, J. Audio Eng. Soc. 20 (1972) 383 and 798.
 */
function pressureDb(file: BenchFile, index: number, f: number): number {
  const setup = file.setups[index];
  const installation = installationOf(file, setup);
  const { motor, cone, bodyVolume } = installation.speaker;
  const sd =
    cone.shape === 'round' ? (Math.PI / 4) * cone.diameter ** 2 : (Math.PI / 4) * cone.length * cone.width;
  const { mount } = setup;
  const air =
    mount.kind === 'box'
      ? (1.204 * 343.2 ** 2 * sd ** 2) / (mount.length * mount.width * mount.depth - bodyVolume)
      : 0;
  const w0 = Math.sqrt((1 / motor.cms + air) / motor.mms);
  const free = Math.sqrt(1 / (motor.cms * motor.mms));
  const damping = (free * motor.mms) / motor.qms + motor.bl ** 2 / motor.re;
  const w = 2 * Math.PI * f;
  const q = (w0 * motor.mms) / damping;
  const highPass = w ** 2 / Math.hypot(w0 ** 2 - w ** 2, (w * w0) / q);
  const ideal = answerOf('rule', { installation, air: file.air, listener: IN_FRONT }, null, 'ideal');
  const { re, im } = ideal.respond(Float64Array.of(f));
  const pascals = (1.204 * sd * motor.bl) / (2 * Math.PI * motor.mms * motor.re);
  return 20 * Math.log10(pascals * highPass * Math.hypot(re[0], im[0]));
}

/** What stands on the shelf: by how much each mount is louder than the one measured against, on this sound. */
async function shelf(file: BenchFile, samples: Float32Array): Promise<number[]> {
  const { lab } = labAtHand();
  await lab.ask({ kind: 'keep', key: 'sound', samples, sampleRate: RATE });
  const figures = () => lab.ask({ kind: 'figures', key: 'sound' });
  const bench = new Bench(file);
  const levels = new Levels(lab, (error) => expect.fail(String(error)));
  const loop = { key: 'sound', sound: file.sound, samples, sampleRate: RATE, figures };
  levels.measure({ loop, stands: bench.stands });
  await vi.waitFor(() => expect(levels.loudness.length).toBe(4), { timeout: 20_000, interval: 2 });
  return bench.stands.map((stand) => levels.difference(stand, bench.measuredAgainst)!);
}

function tone(frequency: number): Float32Array {
  return Float32Array.from({ length: RATE }, (_, i) => 0.1 * Math.sin((2 * Math.PI * frequency * i) / RATE));
}

test.each([400, 1000, 3000])(
  'the levels on the shelf are those of half-space sensitivities, computed apart: %i Hz',
  async (frequency) => {
    for (const against of [0, 2]) {
      const file = benchFile(against);
      const apart = file.setups.map((_, i) => pressureDb(file, i, frequency));
      const written = await shelf(file, tone(frequency));
      written.forEach((level, i) =>
        close(level, apart[i] - apart[against], {
          abs: 0.05,
          because: 'the filter follows the curve so closely; both are loud as long as the tone'
        })
      );
      const order = (levels: number[]) => levels.map((_, i) => i).sort((a, b) => levels[b] - levels[a]);
      expect(order(written)).toEqual(order(apart));
    }
  }
);

test('a weakened magnet never wins: half the force factor is 6 dB less above the resonance', async () => {
  const [strong, weak] = await shelf(benchFile(), tone(4000));
  close(weak - strong, -6.02, { abs: 0.1, because: 'its resonance, four times less damped, is far below' });
  for (const frequency of [500, 1000, 2000]) {
    const [s, w] = await shelf(benchFile(), tone(frequency));
    expect(w, `${frequency} Hz`).toBeLessThan(s - 3);
  }
});

test('curve, filter, bars and harmonics all take the one factor in, and 0 dB stays the speaker measured against', () => {
  const [own, other] = [new Bench(benchFile(1)), new Bench(benchFile(0))].map(({ stands }) => stands[1]);
  expect(own.computed!.answer.drive).toBe(1);
  const halved = (got: ArrayLike<number>, whole: ArrayLike<number>, factor: number) =>
    Array.from(got).forEach((value, i) =>
      close(value, whole[i] * factor, {
        rel: 1e-6,
        abs: 1e-15,
        because: 'rounding, of the filter to 32 bits'
      })
    );
  halved(other.computed!.impulseResponse, own.computed!.impulseResponse, 0.5);
  halved(other.computed!.response.re, own.computed!.response.re, 0.5);
  halved(powerGain(other.computed!.answer, 9, 500), powerGain(own.computed!.answer, 9, 500), 0.25);
  const rate = { frequency: 100, name: 'rate', harmonics: 3 };
  const [heard] = harmonicsOf(rate, measureSound(tone(100), RATE), [own, other]);
  for (const [a, b] of [
    [heard.throughDb[0]!, heard.throughDb[1]!],
    [curveOf(own, true)[0].levelDb[300], curveOf(other, true)[0].levelDb[300]],
    [
      frontGround({ heard: own, file: benchFile() })!.levelDb[300],
      frontGround({ heard: other, file: benchFile() })!.levelDb[300]
    ]
  ])
    close(a - b, 6.0206, { abs: 1e-4, because: 'half the force factor' });
  expect(other.computed!.fallsOff).toBe(own.computed!.fallsOff);
  // One level for all: what is 6 dB softer comes within 10 dB of it later.
  expect(other.computed!.reachesDown!).toBeGreaterThan(own.computed!.reachesDown! * 1.2);
});

test('a lift is in curve, filter, bars, rule and reach, once; and not in what a voltage at the terminals moves', () => {
  const lift = { gainDb: 6, below: 300 };
  const [plain, lifted] = [benchFile(0), { ...benchFile(0), lift }].map((file) => ({
    file,
    heard: new Bench(file).stands[1]
  }));
  const [before, after] = [plain, lifted].map(({ heard }) => heard.computed!);
  const ownGain = (f: number) => levelDb(liftResponse(lift, Float64Array.of(f)))[0];
  PICTURE_GRID.forEach((f, i) =>
    close(after.responseDb[i] - before.responseDb[i], ownGain(f), { abs: 1e-9, because: 'rounding' })
  );
  const [ground, liftedGround] = [plain, lifted].map((one) => frontGround(one)!.levelDb[0]);
  close(liftedGround - ground, ownGain(PICTURE_GRID[0]), { abs: 1e-9, because: 'rounding' });
  const [bars, liftedBars] = [before, after].map(({ answer }) => powerGain(answer, 9, 60));
  close(10 * Math.log10(liftedBars[2] / bars[2]), ownGain(120), { abs: 1e-9, because: 'rounding' });
  // heard: 6 dB at the bottom
  const level = ({ impulseResponse }: Computed, f: number) =>
    loopLoudness(new LoopFilter(tone(f), impulseResponse.length).through(impulseResponse), RATE);
  close(level(after, 300) - level(before, 300), ownGain(300), { abs: 0.05, because: 'a filter of 85 ms' });
  close(level(after, 4000) - level(before, 4000), 0, { abs: 0.05, because: 'far above' });
  expect(after.reachesDown!).toBeLessThan(before.reachesDown!);
  const moved = ({ answer }: Computed) => answer.driven(Float64Array.of(100, 1000)).displacement;
  expect(moved(after)).toEqual(moved(before));
  expect(after.answer.drive).toBe(before.answer.drive);
});

test('by the wave solution, too; the rule beside it, and the marks stay where the mount has them', () => {
  const solved = (against: number, lift?: Lift) => {
    const bench = new Bench(
      { ...benchFile(against, 'wave'), ...(lift && { lift }) },
      {
        best: ({ installation, air, listener }): Known => ({
          accuracy: 'full',
          heard: (drafts[installation.speaker.frame.shape + installation.mount.kind] ??= hearWaves(
            solveMount(installation, air, { accuracy: 'draft' }),
            listener
          ))
        }),
        refusal: () => null
      }
    );
    return { heard: bench.stands[1], file: bench.file, listener: bench.listener };
  };
  const drafts: Record<string, ReturnType<typeof hearWaves>> = {};
  const [own, other] = [solved(1), solved(0)];
  expect(own.heard.computed!.answer.model).toBe('wave');
  close(own.heard.computed!.responseDb[300] - other.heard.computed!.responseDb[300], 6.0206, {
    abs: 1e-4,
    because: 'half the force factor'
  });
  close(ruleBeside(own)[0].levelDb[300] - ruleBeside(other)[0].levelDb[300], 6.0206, {
    abs: 1e-4,
    because: 'half the force factor'
  });
  const marks = ({ heard, file, listener }: typeof own) => lateMarkers(heard, file.air, listener, FULL);
  expect(marks(own).length).toBeGreaterThan(0);
  expect(marks(other)).toEqual(marks(own));
  const lifted = solved(0, { gainDb: 12, below: 600 });
  expect(lifted.heard.computed!.responseDb[0]).toBeGreaterThan(other.heard.computed!.responseDb[0] + 11);
  expect(marks(lifted)).toEqual(marks(own));
});

test('a stand is made anew only when it or its factor changes', () => {
  const bench = new Bench(benchFile());
  const [, weak, small] = bench.stands;
  bench.rename('another name');
  expect(bench.stands[1]).toBe(weak);
  bench.measureAgainst(1);
  expect(bench.stands[2]).not.toBe(small);
  expect(bench.stands[3]).not.toBe(weak);
});

test('a speaker without motor values is never 0 dB and is not heard: the first mount that can be is measured against', () => {
  const file = benchFile(0);
  const { motor, ...without } = file.speakers.oval;
  expect(motor).toBeDefined();
  const bench = new Bench({ ...file, speakers: { ...file.speakers, oval: without } });
  expect(bench.stands[0].problem).toMatch(/has no motor values/);
  expect(bench.measuredAgainst.setup.speaker).toBe('weak');
  expect(bench.stands.map(({ computed }) => computed?.answer.drive)).toEqual([
    undefined,
    1,
    expect.closeTo(10 ** ((69.163 - 67.332 + 6.0206) / 20), 3),
    1
  ]);
});
