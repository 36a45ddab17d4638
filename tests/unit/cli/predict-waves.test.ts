import { describe, expect, test, vi } from 'vitest';
import { predict } from '../../../src/cli/predict.js';
import { Refusal } from '../../../src/cli/refusal.mjs';
import { readBenchFile } from '../../../src/lib/file/read-bench-file.js';
import { installationOf } from '../../../src/lib/file/installation-of.js';
import { ACCURACY } from '../../../src/lib/waves/mesh/accuracy.js';
import { waveSolution } from '../../../src/lib/waves/wave-solution.js';
import { close } from '../../helpers/close.js';
import { demoBenchText, type Loose } from '../../helpers/demo-bench-text.js';
import { predicted, withFile } from '../../helpers/predicted.js';

// Each command is a process of its own; a busy machine takes its time.
vi.setConfig({ testTimeout: 30_000 });

const c = 343.2;

const rounding = { abs: 1e-9, because: 'the same closed form, rounding only' };

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
