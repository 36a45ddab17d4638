import { beforeAll, describe, expect, it, test, vi } from 'vitest';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { fitNow, type FitPrediction } from '../../../../src/lib/evaluation/fit/fit-now.js';
import { predictBench } from '../../../../src/lib/evaluation/prediction.js';
import type { BenchFile, BenchModel } from '../../../../src/lib/file/bench-file.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { layoutBench } from '../../../../src/lib/file/layout-bench.js';
import { loopLoudness } from '../../../../src/lib/listening/loudness.js';
import { powerSpectrum } from '../../../../src/lib/listening/power-spectrum.js';
import { LoopFilter } from '../../../../src/lib/numeric/filter-with.js';
import { impulseResponse, fftFrequencies, tapsFor } from '../../../../src/lib/numeric/impulse-response.js';
import { logGrid } from '../../../../src/lib/numeric/log-grid.js';
import { usualSound } from '../../../../src/lib/sounds/roster.js';
import { SoundBank } from '../../../../src/lib/workers/sound/sound-bank.js';
import { close } from '../../../helpers/close.js';

/** So small that the two phone types alone fit, in the roof and in a box. */
const SMALL: BenchModel = {
  name: 'a tiny railcar',
  length: 0.022,
  width: 0.016,
  height: 0.008,
  above: 0.01,
  obstacles: [],
  roof: [0, 0.022],
  openings: 0,
  sounds: [usualSound('pinkNoise')]
};
const bench: BenchFile = { ...layoutBench(), model: SMALL };
const RATE = 48000;

// Everything is solved in it; a busy machine takes its time.
vi.setConfig({ hookTimeout: 60_000, testTimeout: 60_000 });

const ASKED = { by: 'level', everySize: false, accuracy: 'draft', drive: 1 } as const;
let fitted: FitPrediction;
beforeAll(async () => {
  fitted = await fitNow(bench, ASKED);
});

describe('the ranking of a small case', () => {
  it('has everything that fits', () => {
    expect(fitted.ranking.length).toBeGreaterThan(5);
    expect(new Set(fitted.ranking.map(({ speaker }) => speaker))).toEqual(
      new Set(['phone-11x15', 'phone-13x18'])
    );
    expect(fitted.misfits).toHaveLength(
      9 * 5 - new Set(fitted.ranking.map(({ speaker, way }) => speaker + way)).size
    );
  });

  it('is that of all its setups predicted one by one', () => {
    const samples = new SoundBank().loop(SMALL.sounds[0], RATE);
    const mean = samples.reduce((sum, x) => sum + x * x, 0) / samples.length;
    const levels = fitted.ranking.map(({ setup }) => {
      // as a bench of its own, by the same command as any: its response, and the sound through it in time
      const taps = tapsFor(RATE);
      const frequency = [...fftFrequencies(taps, RATE)];
      const asked = {
        model: 'wave',
        accuracy: 'draft',
        speaker: 'full',
        frequency,
        angleDeg: null,
        plane: null,
        drive: 1
      } as const;
      const [one] = predictBench(
        {
          ...bench,
          setups: [setup],
          view: { ...bench.view, heard: 0, measuredAgainst: 0 },
          speakers: { ...bench.speakers, ...SPEAKERS }
        },
        { ...asked, frequency }
      ).setups;
      const [re, im] = [Math.cos, Math.sin].map((part) =>
        Float64Array.from(one.levelDb, (level, k) =>
          level === null ? 0 : 10 ** (level / 20) * part(one.phaseRad[k])
        )
      );
      const filter = impulseResponse({ re, im });
      const at = one.levelDb.findIndex((level) => level !== null);
      const zeroDb = one.levelAtListenerDb![at]! - one.levelDb[at]!;
      const loudness = loopLoudness(new LoopFilter(samples, taps).through(filter), RATE);
      // what BS.1770 adds to a K-weighted mean square is −0.691 dB
      return zeroDb + loudness + 0.691 - 10 * Math.log10(mean);
    });
    fitted.ranking.forEach(({ levelDb }, i) =>
      close(levelDb, levels[i], {
        abs: 0.15,
        because: 'steady noise: its spectrum by Welch against the gated loudness of the filtered loop'
      })
    );
    levels.slice(1).forEach((level, i) => expect(level).toBeLessThan(levels[i] + 0.15));
  });

  it('is the same every time', async () => {
    expect(await fitNow(structuredClone(bench), ASKED)).toEqual(fitted);
  });

  it('ranks two in the roof before one: 6 dB of voltage in parallel, less what they take from each other', () => {
    const of = (speaker: string, two: boolean) =>
      fitted.ranking.find(
        (one) =>
          one.speaker === speaker && one.way === 'roof' && !!one.setup.second === two && one.setup.turn === 90
      );
    const gain = of('phone-11x15', true)!.levelDb - of('phone-11x15', false)!.levelDb;
    expect(gain).toBeGreaterThan(4);
    expect(gain).toBeLessThan(6.1);
  });
});

test('depth is told against the one level of the bench, and so is what stands on the shelf', () => {
  const [first] = fitted.ranking;
  const frequency = [...logGrid(50, 16000, 96)];
  const [one] = predictBench(
    { ...bench, setups: [first.setup], speakers: SPEAKERS, view: { ...bench.view, measuredAgainst: 0 } },
    { model: 'wave', accuracy: 'draft', speaker: 'full', frequency, angleDeg: null, plane: null, drive: 1 }
  ).setups;
  // 0 dB is the oval's endless plate: at that frequency it lies 10 dB below it
  const oval = predictBench(
    {
      ...bench,
      setups: [{ ...first.setup, speaker: 'oval', mount: { kind: 'free' }, second: undefined }],
      speakers: SPEAKERS,
      listener: demoBench().listener
    },
    {
      model: 'rule',
      accuracy: 'draft',
      speaker: 'full',
      frequency: [1000],
      angleDeg: null,
      plane: null,
      drive: 1
    }
  ).setups[0];
  const less = one.sensitivityDb! - oval.sensitivityDb!;
  const at = frequency.findIndex((f) => f >= first.reachesDown!);
  close(one.levelDb[at]! + less, -10, {
    abs: 1.5,
    because: 'one point of a curve that is judged in third octaves'
  });
});

test('a bench without a model, and one of a recording whose model names no sound, are refused in one sentence', async () => {
  const asked = { ...ASKED, drive: null };
  await expect(fitNow(layoutBench(), asked)).rejects.toThrow(
    'this bench file says no model to be fitted out: it lacks "model"'
  );
  const recorded: BenchFile = {
    ...bench,
    sound: { kind: 'recording', name: 'chuffs.wav' },
    model: { ...SMALL, sounds: [] }
  };
  await expect(fitNow(recorded, asked)).rejects.toThrow(
    'a recording is not in the file: say which sounds the model makes ("model.sounds")'
  );
  const outside = {
    ...SMALL,
    obstacles: [{ name: 'motor', from: 0.016, length: 0.01, aside: 0, width: 0.01, above: 0, height: 0.01 }]
  };
  await expect(fitNow({ ...bench, model: outside }, asked)).rejects.toThrow(
    '“motor” reaches 4 mm out of the body beyond the right end'
  );
});

test('the spectrum of the sound is what it is weighed by', () => {
  // guards the reckoning above: pink noise is steady, so that no gate has a say
  const samples = new SoundBank().loop(SMALL.sounds[0], RATE);
  const { power } = powerSpectrum(samples, RATE);
  close(
    power.reduce((sum, each) => sum + each, 0),
    samples.reduce((sum, x) => sum + x * x, 0) / samples.length,
    { rel: 0.02, because: 'Welch windows of a noise' }
  );
});
