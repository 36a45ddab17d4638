import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { predict } from '../../../src/cli/predict.js';
import type { Prediction } from '../../../src/lib/evaluation/prediction.js';
import { close } from '../../helpers/close.js';
import { demoBenchPath, demoBenchText } from '../../helpers/demo-bench-text.js';
import { runCommand } from '../../helpers/run-command.js';
import { temporaryFolder } from '../../helpers/temporary-folder.js';
import { predicted, withFile } from '../../helpers/predicted.js';

// Each command is a process of its own; a busy machine takes its time.
vi.setConfig({ testTimeout: 30_000 });

const c = 343.2;

const rounding = { abs: 1e-9, because: 'the same closed form, rounding only' };

/** Level of the first-order high-pass H = (jf/fc)/(1 + jf/fc). */
const highPassDb = (f: number, fc: number) => 20 * Math.log10(f / fc) - 10 * Math.log10(1 + (f / fc) ** 2);

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
