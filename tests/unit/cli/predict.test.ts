import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { predict } from '../../../src/cli/predict.js';
import { Refusal } from '../../../src/cli/refusal.mjs';
import type { Prediction } from '../../../src/lib/evaluation/prediction.js';
import type { FitPrediction } from '../../../src/lib/evaluation/fit/fit-now.js';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { readBenchFile } from '../../../src/lib/file/read-bench-file.js';
import { installationOf } from '../../../src/lib/file/installation-of.js';
import { ACCURACY } from '../../../src/lib/waves/mesh/accuracy.js';
import { waveSolution } from '../../../src/lib/waves/wave-solution.js';
import { close } from '../../helpers/close.js';
import { demoBenchPath, demoBenchText, type Loose } from '../../helpers/demo-bench-text.js';
import { runCommand } from '../../helpers/run-command.js';
import { temporaryFolder } from '../../helpers/temporary-folder.js';

// Each command is a process of its own; a busy machine takes its time.
vi.setConfig({ testTimeout: 30_000 });

const c = 343.2;
const rounding = { abs: 1e-9, because: 'the same closed form, rounding only' };

/** The answer without starting a process; `-` in the arguments stands for a file with this text. */
async function predicted(args: string[], text = ''): Promise<Prediction> {
  return JSON.parse(await predict(withFile(args, text))) as Prediction;
}

function withFile(args: string[], text: string): string[] {
  const file = path.join(temporaryFolder(), 'bench.json');
  writeFileSync(file, text);
  return args.map((arg) => (arg === '-' ? file : arg));
}

/** Level of the first-order high-pass H = (jf/fc)/(1 + jf/fc). */
const highPassDb = (f: number, fc: number) => 20 * Math.log10(f / fc) - 10 * Math.log10(1 + (f / fc) ** 2);

/** Two setups of one speaker with motor values, and how hard they are driven. */
const drivenBench = (top: object = {}) =>
  JSON.stringify({
    format: 'backwave-bench',
    version: 6,
    speakers: {
      oval: {
        frame: { length: 0.04, width: 0.028 },
        motor: { mms: 0.00055, cms: 0.00038, bl: 1.6, re: 7.2, qms: 3, xmax: 0.0008, ratedPower: 2 }
      }
    },
    setups: [
      { mount: { kind: 'plate', length: 0.16, width: 0.1, offset: [-0.04, 0] } },
      {
        mount: { kind: 'plate', length: 0.16, width: 0.1, offset: [-0.04, 0] },
        second: { at: [0.04, 0], wiring: 'series' }
      }
    ],
    listener: { distance: 0.5 },
    ...top
  });

/** A tiny round speaker, of which nothing but its size is known, in the middle of a round plate. */
const tinyInRoundPlate = (diameter: number) =>
  JSON.stringify({
    format: 'backwave-bench',
    version: 1,
    speakers: { tiny: { frame: { shape: 'round', diameter: 0.001 } } },
    setups: [{ speaker: 'tiny', mount: { kind: 'plate', shape: 'round', diameter } }]
  });

describe('the answer', () => {
  test('has the shape that is promised, with third-octave midbands from 50 Hz to 16 kHz', async () => {
    const { code, stdout, stderr } = await runCommand('predict', [demoBenchPath]);
    expect([code, stderr]).toEqual([0, '']);
    const prediction = JSON.parse(stdout) as Prediction;
    expect(Object.keys(prediction)).toEqual(['model', 'speaker', 'angleDeg', 'frequency', 'setups']);
    expect(prediction).toMatchObject({ model: 'rule', speaker: 'full', angleDeg: 0 });
    expect(prediction.frequency).toHaveLength(26);
    // IEC 61260-1:2014, 5.4: exact midbands 1000·10^(x/10), here x = −13 … 12
    prediction.frequency.forEach((f, i) =>
      close(f, 1000 * 10 ** ((i - 13) / 10), { rel: 1e-12, ...rounding })
    );
    expect(prediction.setups.map(({ name, kind }) => [name, kind])).toEqual([
      ['Free air', 'free'],
      ['Flat plate', 'plate'],
      ['Round plate', 'plate'],
      ['Cab body', 'shell'],
      ['Closed box', 'box']
    ]);
    for (const setup of prediction.setups) {
      expect(Object.keys(setup)).toEqual(['name', 'kind', 'sensitivityDb', 'levelDb', 'phaseRad']);
      expect(setup.levelDb).toHaveLength(26);
      expect(setup.phaseRad.every((phase) => phase > -Math.PI && phase <= Math.PI)).toBe(true);
    }
  });

  test('keeps the order of the question, doubles too', async () => {
    const args = [demoBenchPath, '--frequencies', '500,100,500'];
    const { frequency, setups } = await predicted(args);
    expect(frequency).toEqual([500, 100, 500]);
    for (const { levelDb } of setups) {
      expect(levelDb[2]).toBe(levelDb[0]);
      expect(levelDb[1]).not.toBe(levelDb[0]);
    }
  });

  test('small cone in a round plate of 127 mm: half a wave at 1351 Hz, −9.19 dB at 500 Hz', async () => {
    const args = ['-', '--speaker', 'ideal', '--frequencies', `500,${c / (2 * 0.127)}`];
    const [{ name, levelDb, phaseRad }] = (await predicted(args, tinyInRoundPlate(0.127))).setups;
    expect(name).toBe('Round plate');
    // H. Lamb, Hydrodynamics, 6th ed., art. 102 and 108 (from memory): d = 2a/π, so that fc = c/(2D)
    const small = { abs: 0.005, because: 'the worked example is rounded to 0.01 dB; cone of 1 mm' };
    close(Number(levelDb[0]), -9.19, small);
    close(Number(levelDb[1]), -10 * Math.log10(2), {
      abs: 1e-3,
      because: 'a cone of 1 mm is nearly a point'
    });
    close(phaseRad[1], Math.PI / 4, { abs: 1e-3, because: 'a cone of 1 mm is nearly a point' });
  });

  test('plate of 152.4 × 101.6 mm: the arm averaged over the cone, by brute force', async () => {
    const [length, width] = [0.1524, 0.1016];
    // semi-axes of the ellipse of equal area and aspect; E(m) and the mean by the midpoint rule
    const [a, b] = [length / Math.sqrt(Math.PI), width / Math.sqrt(Math.PI)];
    const m = 1 - (b / a) ** 2;
    const n = 2000;
    let e = 0;
    for (let i = 0; i < n; i++)
      e += (Math.sqrt(1 - m * Math.sin(((i + 0.5) / n) * (Math.PI / 2)) ** 2) * Math.PI) / 2 / n;
    let sum = 0;
    let count = 0;
    for (let i = 0; i < 800; i++)
      for (let j = 0; j < 800; j++) {
        const [u, v] = [(i + 0.5) / 400 - 1, (j + 0.5) / 400 - 1];
        if (u * u + v * v > 1) continue;
        const [x, y] = [u * 0.017, v * 0.01125];
        sum += Math.sqrt((1 - ((2 * x) / length) ** 2) * (1 - ((2 * y) / width) ** 2));
        count++;
      }
    const fc = c / (2 * Math.PI * ((b / e) * (sum / count)));
    const { setups, frequency } = await predicted([demoBenchPath, '--speaker', 'ideal']);
    const brute = { abs: 2e-3, because: 'mean over a grid of 800 × 800 points' };
    frequency.forEach((f, k) => close(Number(setups[1].levelDb[k]), highPassDb(f, fc), brute));
  });

  test('shell: half the width and the wall, out and back, are the string', async () => {
    const { setups, frequency } = await predicted([demoBenchPath, '--speaker', 'ideal']);
    const fc = c / (2 * (2 * (0.033 / 2 + 0.04)));
    frequency.forEach((f, k) => close(Number(setups[3].levelDb[k]), highPassDb(f, fc), rounding));
  });

  test('box: resonance and Q of the closed box, times the shelf', async () => {
    const { setups, frequency } = await predicted([demoBenchPath]);
    // R. H. Small, "Closed-Box Loudspeaker Systems, Part I", J. Audio Eng. Soc. 20 (1972) 798
    const [mms, cms, bl, re, qms] = [0.00055, 0.00038, 1.6, 7.2, 3];
    const area = (Math.PI / 4) * 0.034 * 0.0225;
    const fs = 1 / (2 * Math.PI * Math.sqrt(mms * cms));
    const qes = (2 * Math.PI * fs * mms * re) / bl ** 2;
    const qts = 1 / (1 / qms + 1 / qes);
    const vas = 1.204 * c ** 2 * area ** 2 * cms;
    const net = 0.042 * 0.029 * 0.017 - 0.5 * 0.04 * 0.028 * 0.012;
    const stiffening = Math.sqrt(1 + vas / net);
    const [fc, qtc] = [fs * stiffening, qts * stiffening];
    const fm = c / (3.85 * Math.sqrt(0.042 * 0.029));
    frequency.forEach((f, k) => {
      const x = f / fc;
      const highPass = x ** 2 / Math.hypot(1 - x ** 2, x / qtc);
      const shelf = Math.hypot(f, fm / Math.SQRT2) / Math.hypot(f, fm * Math.SQRT2);
      close(Number(setups[4].levelDb[k]), 20 * Math.log10(highPass * shelf), rounding);
    });
  });

  test('a distance brings an open mount nearer than the plate it is compared with', async () => {
    const near = demoBenchText((bench) => (bench.listener = { distance: 0.3 }));
    const args = ['--frequencies', '100'];
    const far = await predicted([demoBenchPath, ...args]);
    const [at, box] = [1, 4].map(
      (i) => async () => (await predicted(['-', ...args], near)).setups[i].levelDb[0]
    );
    const factor = 10 * Math.log10(1 + (c / (2 * Math.PI * 100 * 0.3)) ** 2);
    close(Number(await at()), Number(far.setups[1].levelDb[0]) + factor, rounding);
    close(Number(await box()), Number(far.setups[4].levelDb[0]), rounding);
  });

  test('an angle on the command line takes the place of the one in the file', async () => {
    const aside = demoBenchText((bench) => (bench.listener = { angleDeg: 30 }));
    const straight = await predicted(['-', '--angle', '0', '--plane', 'length'], aside);
    expect(straight).toEqual(await predicted([demoBenchPath]));
  });

  test('sensitivityDb: of each speaker with motor values, whatever 0 dB is; R. H. Small (1972)', async () => {
    const text = demoBenchText((bench) => {
      const { oval } = bench.speakers;
      const weak = { ...(oval.motor as { bl: number }), bl: (oval.motor as { bl: number }).bl / 2 };
      Object.assign(bench.speakers, {
        weak: { ...oval, motor: weak },
        bare: { frame: oval.frame, cone: oval.cone }
      });
      bench.setups = [
        bench.setups[1],
        { ...bench.setups[1], speaker: 'weak' },
        { ...bench.setups[1], speaker: 'bare' }
      ];
    });
    const { setups } = await predicted(['-', '--speaker', 'ideal'], text);
    const given = setups.map(({ sensitivityDb }) => sensitivityDb);
    const sd = (Math.PI / 4) * 0.034 * 0.0225;
    const expected = 20 * Math.log10((1.204 * sd * 1.6) / (2 * Math.PI * 0.55e-3 * 7.2) / 20e-6);
    close(given[0]!, expected, rounding);
    close(given[1]!, expected - 20 * Math.log10(2), rounding);
    expect(given[2]).toBeUndefined();
    expect(Object.keys(setups[0])).toEqual(['name', 'kind', 'sensitivityDb', 'levelDb', 'phaseRad']);
    expect(Object.keys(setups[2])).toEqual(['name', 'kind', 'levelDb', 'phaseRad']);
    expect(setups[1].levelDb).toEqual(setups[0].levelDb);
  });

  test('csv: a header, quoted where it must be, and one row a frequency', async () => {
    const text = demoBenchText((bench) => {
      bench.setups = bench.setups.slice(0, 2);
      bench.setups[0].name = 'Free, "bare"';
    });
    const args = ['-', '--format', 'csv', '--frequencies', '100,1000'];
    const stdout = await predict(withFile(args, text));
    const json = (await predicted(args.with(2, 'json'), text)).setups;
    expect(stdout.split('\n')).toEqual([
      'frequency_hz,"Free, ""bare"" level_db","Free, ""bare"" phase_rad",Flat plate level_db,Flat plate phase_rad',
      ...[0, 1].map((k) =>
        [[100, 1000][k], ...json.flatMap((setup) => [setup.levelDb[k], setup.phaseRad[k]])].join(',')
      ),
      ''
    ]);
  });

  test('a file is looked for where the user stands, spaces and all', async () => {
    const folder = path.join(temporaryFolder(), 'my benches');
    mkdirSync(folder);
    writeFileSync(path.join(folder, 'a bench.json'), `\ufeff${demoBenchText()}`);
    const { code } = await runCommand('predict', ['a bench.json'], { cwd: folder });
    expect(code).toBe(0);
  });

  test('help is an answer', async () => {
    expect(await predict(['--help'])).toContain('--frequencies');
  });
});

describe('the wave solution', () => {
  const draft = ['--model', 'wave', '--accuracy', 'draft'];
  /** The demo bench with the setups of these places alone. */
  const only = (...places: number[]) =>
    demoBenchText((bench) => (bench.setups = places.map((i) => bench.setups[i])));

  test('has the shape of the rule of thumb, how far it was solved, and the load', async () => {
    const args = [...draft, '--frequencies', '1000,0.001,500,1e6,1000'];
    const prediction = await predicted(['-', ...args], only(1, 4));
    expect(Object.keys(prediction)).toEqual([
      'model',
      'accuracy',
      'speaker',
      'angleDeg',
      'frequency',
      'setups'
    ]);
    expect(prediction).toMatchObject({ model: 'wave', accuracy: 'draft', speaker: 'full', angleDeg: 0 });
    expect(prediction.setups.map(({ name, kind }) => [name, kind])).toEqual([
      ['Flat plate', 'plate'],
      ['Closed box', 'box']
    ]);
    for (const setup of prediction.setups) {
      expect(Object.keys(setup)).toEqual([
        'name',
        'kind',
        'sensitivityDb',
        'highest',
        'levelDb',
        'phaseRad',
        'load'
      ]);
      expect(setup.highest).toBeGreaterThanOrEqual(ACCURACY.draft.highest);
      expect(setup.highest).toBeLessThanOrEqual(ACCURACY.draft.reach);
      const { re, im } = setup.load!;
      for (const numbers of [setup.levelDb, setup.phaseRad, re, im]) {
        expect(numbers.map(Number.isFinite)).toEqual([true, true, true, true, true]);
        expect(numbers[4]).toBe(numbers[0]);
      }
    }
  });

  test('is what the model itself says, off the axis and near by, fully or as a draft', async () => {
    const text = demoBenchText((bench) => {
      // the bare speaker is quickly solved, fully too
      bench.setups = [bench.setups[0], bench.setups[3]];
      bench.listener = { angleDeg: 30, plane: 'length', distance: 0.3 };
    });
    const bench = readBenchFile(text);
    const grid = Float64Array.of(80, 700, 1600, 8000);
    for (const [accuracy, speaker, setups] of [
      ['full', 'full', [0]],
      ['draft', 'ideal', [0, 1]]
    ] as const) {
      const file = JSON.stringify({ ...bench, setups: setups.map((i) => bench.setups[i]) });
      const prediction = await predicted(
        // full is what nothing was said of
        ['-', '--model', 'wave', '--speaker', speaker, '--frequencies', grid.join()].concat(
          accuracy === 'draft' ? ['--accuracy', 'draft'] : []
        ),
        file
      );
      expect([prediction.accuracy, prediction.angleDeg]).toEqual([accuracy, 30]);
      setups.forEach((i, k) => {
        const installation = installationOf(bench, bench.setups[i], speaker);
        const asked = waveSolution(installation, bench.air, bench.listener, grid, speaker, { accuracy });
        const { levelDb, phaseRad, load, highest } = prediction.setups[k];
        expect(highest).toBe(asked.highest);
        expect(load).toEqual({ re: [...asked.load.re], im: [...asked.load.im] });
        grid.forEach((_, j) => {
          const modulus = 10 ** (Number(levelDb[j]) / 20);
          close(modulus * Math.cos(phaseRad[j]), asked.re[j], rounding);
          close(modulus * Math.sin(phaseRad[j]), asked.im[j], rounding);
        });
      });
    }
  });

  test('box: half the sound of the endless plate at 50 Hz, and its air is a spring', async () => {
    const args = ['-', ...draft, '--speaker', 'ideal', '--frequencies', '50', '--angle', '70'];
    const [{ levelDb, load }] = (await predicted(args, only(4))).setups;
    // R. H. Small, "Closed-Box Loudspeaker Systems, Part I", J. Audio Eng. Soc. 20 (1972) 798: all round, as much as a point
    close(Number(levelDb[0]), -20 * Math.log10(2), { abs: 0.05, because: 'a box of 0.6 % of a wave' });
    const net = 0.042 * 0.029 * 0.017 - 0.5 * 0.04 * 0.028 * 0.012;
    close(load!.im[0], (-1.204 * c ** 2) / (2 * Math.PI * 50 * net), {
      rel: 0.01,
      because: 'the compliance alone; the mass of the air is less than 10⁻³ of it at 50 Hz'
    });
  });

  test('an angle is heard: a bare speaker is silent from the side, and from behind upside down', async () => {
    const at = async (angle: string) => {
      const args = ['-', ...draft, '--speaker', 'ideal', '--frequencies', '200,400', '--angle', angle];
      return (await predicted(args, only(0))).setups[0];
    };
    const [front, aside, side, behind] = [await at('0'), await at('60'), await at('90'), await at('180')];
    for (const k of [0, 1]) {
      // a dipole: cos θ
      close(Number(aside.levelDb[k]) - Number(front.levelDb[k]), -20 * Math.log10(2), {
        abs: 0.05,
        because: 'a frame of 40 mm is a point below 400 Hz'
      });
      expect(Number(side.levelDb[k])).toBeLessThan(Number(front.levelDb[k]) - 100);
      close(Number(behind.levelDb[k]), Number(front.levelDb[k]), rounding);
      close(Math.abs(behind.phaseRad[k] - front.phaseRad[k]), Math.PI, rounding);
    }
  });

  test('the plane of the angle: a long plate is not wide', async () => {
    const at = async (plane: string) => {
      const args = ['-', ...draft, '--frequencies', '2500', '--angle', '50', '--plane', plane];
      return Number((await predicted(args, only(1))).setups[0].levelDb[0]);
    };
    expect(Math.abs((await at('length')) - (await at('width')))).toBeGreaterThan(1);
  });

  test('csv: two more columns a setup', async () => {
    const args = ['-', ...draft, '--frequencies', '100,1000'];
    const [{ levelDb, phaseRad, load }] = (await predicted(args, only(4))).setups;
    const stdout = await predict(withFile([...args, '--format', 'csv'], only(4)));
    expect(stdout.split('\n')).toEqual([
      'frequency_hz,Closed box level_db,Closed box phase_rad,Closed box load_re_pa_s_m3,Closed box load_im_pa_s_m3',
      ...[0, 1].map((k) => [[100, 1000][k], levelDb[k], phaseRad[k], load!.re[k], load!.im[k]].join()),
      ''
    ]);
  });

  test('a mount that cannot be meshed is refused by its name', async () => {
    const stdin = demoBenchText((bench) => {
      Object.assign(bench.setups[1].mount, { length: 3, width: 0.03 });
    });
    await expect(predict(withFile(['-', '--model', 'wave'], stdin))).rejects.toThrow(
      new Refusal(
        'setups[1] (Flat plate): this mount is too large or too slender for the wave solution: make its longest side shorter or its shortest side longer'
      )
    );
  });

  test('what shows only when it is solved is refused by its name too, after all have been checked', async () => {
    const light = (change: (bench: Loose) => void) =>
      demoBenchText((bench) => {
        bench.setups = [bench.setups[4], bench.setups[1]];
        Object.assign(bench.speakers.oval.motor as object, { mms: 1e-5 });
        change(bench);
      });
    const refused = (text: string) => expect(predict(withFile(['-', ...draft], text))).rejects;
    await refused(light(() => undefined)).toThrow(
      /^setups\[0\] \(Closed box\): the moving mass must be above the 0\.01\d* g of air/
    );
    const slender = (bench: Loose) => Object.assign(bench.setups[1].mount, { length: 3, width: 0.03 });
    await refused(light(slender)).toThrow(
      /^setups\[1\] \(Flat plate\): this mount is too large or too slender/
    );
  });
});

describe('at a stated drive', () => {
  const f = [0.001, 348.133, 1000];
  const flags = ['-', '--frequencies', f.join(), '--drive', '2'];

  test('level, travel and impedance are those of Small (1972), by the rule of thumb', async () => {
    const { drive, setups } = await predicted(flags, drivenBench());
    expect(drive).toBe(2);
    const [one, two] = setups;
    // what is written down here is worked out apart from the program: fs, Qes of these motor values
    const [mms, cms, bl, re, qms] = [0.00055, 0.00038, 1.6, 7.2, 3];
    const fs = 1 / (2 * Math.PI * Math.sqrt(mms * cms));
    const qes = (2 * Math.PI * fs * mms * re) / (bl * bl);
    const area = (Math.PI / 4) * 0.034 * 0.0224;
    const atHalfAMetre = (1.2041 * area * bl * 2) / (2 * Math.PI * mms * re * 0.5);
    one.levelAtListenerDb!.forEach((level, k) =>
      close(level! - one.levelDb[k]!, 20 * Math.log10(atHalfAMetre / 20e-6), {
        abs: 0.01,
        because: 'density of air in four digits'
      })
    );
    close(one.travel![0], (Math.SQRT2 * 2 * bl * cms) / re, { rel: 1e-6, because: 'the spring alone' });
    close(two.travel![0], one.travel![0] / 2, { rel: 1e-6, because: 'half the voltage each' });
    close(one.impedance!.re[0], re, { rel: 1e-6, because: 'nothing moves' });
    close(one.impedance!.re[1], re * (1 + qms / qes), { rel: 1e-4, because: 'f in six digits' });
    close(two.impedance!.re[1], 2 * one.impedance!.re[1], { rel: 1e-9, because: 'one after the other' });
    close(two.levelAtListenerDb![0]! - one.levelAtListenerDb![0]!, 0, { abs: 1e-6, because: 'series: 0 dB' });
  });

  test('the file’s drive counts where no flag does, in volts or in watts', async () => {
    const [, ...rest] = flags;
    const file = { drive: { watts: 0.5, into: 8 } };
    const byFile = await predicted(['-', ...rest.slice(0, 2)], drivenBench(file));
    expect(byFile.drive).toBe(2);
    expect(byFile).toEqual(await predicted(flags, drivenBench()));
    expect(
      await predicted(['-', '--drive', '2', '--frequencies', f.join()], drivenBench({ drive: { volts: 9 } }))
    ).toEqual(byFile);
  });

  test('without a drive, or for the mount alone, nothing is told of it', async () => {
    for (const args of [['-'], ['-', '--speaker', 'ideal']]) {
      const prediction = await predicted(args, drivenBench(args.length > 1 ? { drive: { volts: 2 } } : {}));
      expect(prediction).not.toHaveProperty('drive');
      expect(prediction.setups[0]).not.toHaveProperty('travel');
    }
  });

  test('the wave solution tells the same with its own load', async () => {
    const { setups } = await predicted([...flags, '--model', 'wave', '--accuracy', 'draft'], drivenBench());
    const [one, two] = setups;
    expect(Object.keys(one)).toEqual([
      ...['name', 'kind', 'sensitivityDb', 'highest', 'levelDb', 'phaseRad', 'load'],
      ...['levelAtListenerDb', 'travel', 'impedance']
    ]);
    close(one.impedance!.re[0], 7.2, { rel: 1e-6, because: 'nothing moves' });
    close(two.travel![0], one.travel![0] / 2, { rel: 1e-3, because: 'the spring alone' });
  });

  test('a lift of the file is in levels and travel, and not in the impedance', async () => {
    const lift = { gainDb: 6, below: 300 };
    const [plain, lifted] = await Promise.all(
      [{}, { lift }].map((top) => predicted(flags, drivenBench(top)))
    );
    expect(plain).not.toHaveProperty('lift');
    expect(lifted.lift).toEqual(lift);
    const [one, two] = [plain.setups[0], lifted.setups[0]];
    // all of it where the spring alone holds the cone, next to nothing at 3 kHz
    close(two.levelAtListenerDb![0]! - one.levelAtListenerDb![0]!, 6, {
      abs: 0.01,
      because: 'far below 300 Hz'
    });
    close(two.levelDb[0]! - one.levelDb[0]!, 6, { abs: 0.01, because: 'far below 300 Hz' });
    close(two.travel![0] / one.travel![0], 10 ** (6 / 20), { rel: 0.001, because: 'far below 300 Hz' });
    expect(two.impedance).toEqual(one.impedance);
    expect((await predicted(['-', '--speaker', 'ideal'], drivenBench({ lift }))).setups[0].levelDb).toEqual(
      (await predicted(['-', '--speaker', 'ideal'], drivenBench())).setups[0].levelDb
    );
  });

  test('as a table four columns more', async () => {
    const csv = await predict(withFile([...flags, '--format', 'csv'], drivenBench()));
    expect(csv.split('\n')[0].split(',').slice(1, 7)).toEqual([
      'Flat plate level_db',
      'Flat plate phase_rad',
      'Flat plate level_at_listener_db',
      'Flat plate travel_m',
      'Flat plate impedance_re_ohm',
      'Flat plate impedance_im_ohm'
    ]);
  });
});

describe('a refusal is one sentence on stderr, nothing on stdout, and exit code 2', () => {
  /** The sentence of a refusal, without starting a process. */
  async function refused(args: string[], text = ''): Promise<string> {
    const refusal = await predict(withFile(args, text)).then(
      () => expect.unreachable('an answer'),
      (error: Error) => error
    );
    expect(refusal.name).toBe('Refusal');
    expect(refusal.message).toMatch(/^[^\n]{10,300}$/);
    return refusal.message;
  }

  test.each<[string, string[], string, string]>([
    ['a flag', ['-', '--model', 'waves'], '', '--model must be rule or wave, got "waves"'],
    ['too much of it', ['-'], ' '.repeat(5_000_000), 'stdin is too large for a bench file (over 4 MB)']
  ])('from the command itself: %s', async (_, args, stdin, sentence) => {
    expect(await runCommand('predict', args, { stdin })).toEqual({
      code: 2,
      stdout: '',
      stderr: `${sentence}\n`
    });
  });

  test.each<[string, string[], string, string]>([
    ['no file', ['gone.json'], '', '"gone.json" cannot be read: there is no such file'],
    [
      'a newer file',
      ['-'],
      '{"format":"backwave-bench","version":7}',
      'this bench file is of version 7; this program reads versions 1 … 6'
    ],
    ['--by without --fit', ['-', '--by', 'deep'], '', '--by is for --fit only'],
    [
      '--fit with a flag of single setups',
      ['-', '--fit', '--frequencies', '100'],
      '',
      '--frequencies does not go with --fit, which asks the wave solution where the file listens'
    ],
    [
      '--fit of a bench without a model',
      ['-', '--fit'],
      drivenBench({ version: 6 }),
      'this bench file says no model to be fitted out: it lacks "model"'
    ],
    [
      'a measure that is none',
      ['-', '--fit', '--by', 'best'],
      '',
      '--by must be level or deep or even or space or price or loudest, got "best"'
    ],
    [
      'a drive for a mount alone',
      ['-', '--speaker', 'ideal', '--drive', '1'],
      demoBenchText(),
      '--drive is for --speaker full only: ideal leaves out what a voltage does to the speaker'
    ],
    ['no drive', ['-', '--drive', '0'], demoBenchText(), '--drive must be within 0.001 … 100 V, got "0"'],
    [
      'a mount',
      ['-'],
      demoBenchText((bench) => (bench.setups[1].mount.length = 0)),
      'setups[1] (Flat plate): plate length must be within 1 … 3000 mm, got 0'
    ],
    [
      'an angle',
      [demoBenchPath, '--angle', '-30'],
      '',
      'the rule of thumb knows the sound straight in front of the cone only: angle must be 0, got -30'
    ]
  ])('word for word: %s', async (_, args, text, sentence) => {
    expect(await refused(args, text)).toBe(sentence);
  });

  test.each<[string[], string]>([
    [[], 'give one bench file, or - for stdin, got 0 (--help lists all)'],
    [['a', 'b'], 'give one bench file, or - for stdin, got 2 (--help lists all)'],
    [['-', '--modle', 'rule'], "Unknown option '--modle' (--help lists what there is)"],
    [['-', '--model', 'waves'], '--model must be rule or wave, got "waves"'],
    [['-', '--model', 'wave', '--accuracy', 'best'], '--accuracy must be draft or full, got "best"'],
    [['-', '--accuracy', 'draft'], '--accuracy is for --model wave only: the rule of thumb is a closed form'],
    [['-', '--speaker', 'both'], '--speaker must be ideal or full, got "both"'],
    [['-', '--plane', 'height'], '--plane must be length or width, got "height"'],
    [['-', '--format', 'xml'], '--format must be json or csv, got "xml"'],
    [['-', '--frequencies', '0'], '--frequencies must be within 0.001 … 1000000 Hz, got "0"'],
    [['-', '--frequencies', '100,-5'], '--frequencies must be within 0.001 … 1000000 Hz, got "-5"'],
    [['-', '--frequencies', '100,,200'], '--frequencies must be within 0.001 … 1000000 Hz, got ""'],
    [['-', '--frequencies', 'Infinity'], '--frequencies must be within 0.001 … 1000000 Hz, got "Infinity"'],
    [['-', '--frequencies', '0x10'], '--frequencies must be within 0.001 … 1000000 Hz, got "0x10"'],
    [
      ['-', '--frequencies', '1'.concat(',1'.repeat(10_000))],
      '--frequencies takes at most 10000 frequencies, got 10001'
    ],
    [['-', '--angle', 'left'], '--angle must be within -180 … 180 degrees, got "left"'],
    [['no such file.json'], '"no such file.json" cannot be read: there is no such file'],
    [[import.meta.dirname], `${JSON.stringify(import.meta.dirname)} cannot be read: it is a folder`]
  ])('%j', async (args, sentence) => {
    expect(await refused(args)).toBe(sentence);
  });

  test.each<[string, string | RegExp]>([
    ['', 'the bench file is empty'],
    ['hello', /^the bench file is not JSON/],
    [
      '{"format": "backwave-bench",\n "version": 1,,}',
      'the bench file is not JSON: line 2, column 15 cannot be read'
    ],
    ['['.repeat(100_000), 'the bench file is nested more than 16 levels deep; no bench is'],
    [' '.repeat(1_000_001), /^the bench file is 1\.0 million characters long; at most 1 million are read$/]
  ])('a file that is none: %#', async (text, sentence) => {
    const got = await refused(['-'], text);
    if (typeof sentence === 'string') expect(got).toBe(sentence);
    else expect(got).toMatch(sentence);
  });

  test.each<[string, (bench: Loose) => void, RegExp]>([
    [
      'a mistyped key',
      (b) => (b.setups[1].mount.lenght = 1),
      /^setups\[1\]\.mount has an unknown key "lenght"$/
    ],
    [
      'a length of 0',
      (b) => (b.setups[1].mount.length = 0),
      /^setups\[1\] \(Flat plate\): plate length .*got 0$/
    ],
    ['a negative one', (b) => (b.setups[1].mount.width = -1), /^setups\[1\] \(Flat plate\): plate width /],
    ['an absurd one', (b) => (b.setups[3].mount.height = 1e9), /^setups\[3\] \(Cab body\): shell height /],
    [
      'no number',
      (b) => (b.setups[4].mount.depth = '17 mm'),
      /^setups\[4\]\.mount\.depth must be a number, got "17 mm"$/
    ],
    [
      'a cone larger than its plate',
      (b) => (b.setups[2].mount.diameter = 0.02),
      /^setups\[2\] .*the cone .* plate/
    ],
    [
      'a body that fills its box',
      (b) => (b.speakers.oval.bodyVolume = 0.001),
      /^setups\[4\] .*body fills the box/
    ],
    ['a speaker without motor', (b) => delete b.speakers.oval.motor, /^setups\[0\] .*no motor values/],
    ['an angle', (b) => (b.listener.angleDeg = 30), /angle must be 0, got 30$/]
  ])('%s', async (_, change, sentence) => {
    expect(await refused(['-'], demoBenchText(change))).toMatch(sentence);
  });

  test('what is no text', async () => {
    const file = path.join(temporaryFolder(), 'noise.json');
    writeFileSync(file, Buffer.from([0xff, 0xfe, 0x00, 0x80]));
    expect(await refused([file])).toMatch(/noise\.json" cannot be read: it is no UTF-8 text$/);
  });
});

describe('over a board', () => {
  const layout = (change: (bench: Loose) => void = () => {}) =>
    demoBenchText((bench) => {
      bench.version = 3;
      bench.listener = { board: true, angleDeg: 60, distance: 0.9 };
      bench.setups = [bench.setups[0], bench.setups[4]];
      bench.setups[1].above = 0.03;
      bench.setups[1].facing = 'down';
      change(bench);
    });
  const asked = ['-', '--model', 'wave', '--accuracy', 'draft', '--frequencies', '200,1500'];

  test('the wave solution is asked with each mount as high as it stands', async () => {
    const prediction = await predicted(asked, layout());
    expect(prediction).toMatchObject({ model: 'wave', angleDeg: 60, board: true });
    const bench = readBenchFile(layout());
    prediction.setups.forEach(({ levelDb }, i) => {
      const { re, im } = waveSolution(
        installationOf(bench, bench.setups[i]),
        bench.air,
        { angleDeg: 60, plane: 'width', distance: 0.9 },
        Float64Array.of(200, 1500),
        'full',
        { accuracy: 'draft' }
      );
      levelDb.forEach((level, k) => close(level!, 20 * Math.log10(Math.hypot(re[k], im[k])), rounding));
    });
    const [inHand] = (
      await predicted(
        asked,
        layout((bench) => (bench.listener.board = false))
      )
    ).setups;
    expect(inHand.levelDb[0]!).toBeGreaterThan(prediction.setups[0].levelDb[0]! + 10);
  });

  test.each<[string, string[], string, string]>([
    [
      'the rule of thumb',
      ['-'],
      layout(),
      'the rule of thumb knows nothing of a board: ask for the wave solution, or leave listener.board out'
    ],
    [
      'an ear below it',
      [...asked, '--angle', '100'],
      layout(),
      'angle of the listener over the board must be within -90 … 90 °, got 100'
    ],
    [
      'a board through the mount',
      asked,
      layout((bench) => (bench.setups[1].above = -0.01)),
      'setups[1] (Closed box): the board cuts through the mount: its lowest part must be within 1 … 1000 mm above the board, got -10'
    ],
    [
      'a magnet on the board',
      asked,
      layout((bench) => (bench.setups[0].above = 0.01)),
      'setups[0] (Free air): the magnet touches the board: it reaches 12 mm below the frame, which is 10 mm above the board'
    ]
  ])('refuses %s in one sentence', async (_, args, text, sentence) => {
    await expect(predict(withFile(args, text))).rejects.toThrow(new Refusal(sentence));
  });
});

describe('openings', () => {
  const asked = [
    '-',
    '--model',
    'wave',
    '--accuracy',
    'draft',
    '--speaker',
    'ideal',
    '--frequencies',
    '300,1250'
  ];
  /** The closed box alone, with more to its mount. */
  const box = (more: object, change: (bench: Loose) => void = () => {}) =>
    demoBenchText((bench) => {
      bench.version = 4;
      bench.setups = [{ ...bench.setups[4], mount: { ...bench.setups[4].mount, ...more } }];
      change(bench);
    });
  const level = async (text: string) => (await predicted(asked, text)).setups[0].levelDb.map(Number);

  test('are in what the wave solution foretells', async () => {
    const [tight, leaky, holed, grilled] = [
      await level(box({})),
      await level(box({ leak: { gap: 0.0001, length: 0.126, depth: 0.002 } })),
      await level(box({ leak: { hole: 0.002 } })),
      await level(box({ grille: { holes: 6, diameter: 0.0015, cavity: 0.002 } }))
    ];
    expect(leaky[0]).toBeLessThan(tight[0] - 4);
    expect(holed[0]).toBeLessThan(tight[0] - 2);
    expect(grilled[1]).toBeGreaterThan(tight[1] + 0.5);
  });

  test.each<[string, string[], string, string]>([
    [
      'the rule of thumb',
      ['-'],
      box({ grille: { holes: 6, diameter: 0.0015, cavity: 0.002 } }),
      'setups[0] (Closed box): the rule of thumb knows nothing of a grille of a mount: ask for the wave solution, or leave mount.grille out'
    ],
    [
      'a chassis in a box',
      asked,
      box({ chassis: { height: 0.005, slit: 0.001 } }),
      'setups[0] (Closed box): only a shell has a chassis in it, a mount of kind box has none'
    ],
    [
      'a board through the body of a box',
      asked,
      box({ body: { length: 0.1, width: 0.04, height: 0.03, openings: 0.0003 } }, (bench) => {
        bench.listener = { board: true };
        bench.setups[0].above = -0.002;
      }),
      'setups[0] (Closed box): the board cuts through the mount: its lowest part must be within 1 … 1000 mm above the board, got -2'
    ]
  ])('are refused in one sentence: %s', async (_, args, text, sentence) => {
    await expect(predict(withFile(args, text))).rejects.toThrow(new Refusal(sentence));
  });
});

describe('--fit', () => {
  /** In which one of the reference speakers fits: in the roof, both ways round. */
  const text = drivenBench({
    version: 6,
    model: { length: 0.016, width: 0.016, height: 0.01, roof: [0, 0.016], sounds: [{ kind: 'pinkNoise' }] }
  });

  test('prints the ranking as JSON, each line with the setup that it is, and what does not fit', async () => {
    const printed = await predict(withFile(['-', '--fit', '--by', 'even'], text));
    const fitted = JSON.parse(printed) as FitPrediction;
    expect(fitted).toMatchObject({ model: 'My model', by: 'even', accuracy: 'draft', drive: 1, refused: [] });
    expect(fitted.ranking.map(({ speaker, way }) => `${speaker} ${way}`)).toContain('phone-11x15 roof');
    const evenness = fitted.ranking.map(({ unevennessDb }) => unevennessDb);
    expect(evenness).toEqual([...evenness].sort((a, b) => a - b));
    expect(fitted.misfits).toContainEqual({
      speaker: 'oval',
      way: 'roof',
      why: 'it is 24 mm too large: it needs 40 mm along, and there are 16 mm for it',
      remedy: null
    });
    // a setup of the ranking is one of a bench file
    const { setup } = fitted.ranking[0];
    const again = {
      ...(JSON.parse(text) as object),
      setups: [setup],
      speakers: { [setup.speaker]: SPEAKERS[setup.speaker] }
    };
    expect(readBenchFile(JSON.stringify(again)).setups).toEqual([setup]);
  });

  test('and as a table, one row a candidate', async () => {
    const rows = (await predict(withFile(['-', '--fit', '--format', 'csv'], text))).trimEnd().split('\n');
    expect(rows[0]).toBe(
      'place,tied,name,speaker,way,level_db,reaches_down_hz,unevenness_db,space_m3,price,loudest_db,loudest_v,limit'
    );
    expect(rows.length).toBeGreaterThan(1);
    expect(rows[1]).toMatch(/^1,(yes|no),/);
  });
});
