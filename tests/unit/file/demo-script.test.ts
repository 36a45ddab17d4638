import { expect, test } from 'vitest';
import type { Installation } from '../../../src/lib/acoustics/installation.js';
import type { Listener } from '../../../src/lib/acoustics/listener.js';
import { checkInstallation } from '../../../src/lib/acoustics/mounts/check-installation.js';
import { ruleFigures } from '../../../src/lib/acoustics/rule/rule-figures.js';
import { demoBench } from '../../../src/lib/file/demo-bench.js';
import { demoScript } from '../../../src/lib/file/demo-script.js';
import { installationOf } from '../../../src/lib/file/installation-of.js';
import { readBenchFile } from '../../../src/lib/file/read-bench-file.js';
import { writeBenchFile } from '../../../src/lib/file/write-bench-file.js';
import { levelDb } from '../../../src/lib/numeric/level-db.js';
import { waveSolution } from '../../../src/lib/waves/wave-solution.js';
import { close } from '../../helpers/close.js';

const demo = demoBench();
const script = demoScript();

const scene = (name: string) => script.find((one) => one.name === name)!;

/** What is mounted in a scene, as one listens there. */
function mounted(name: string): Installation {
  const { setup, listener } = scene(name).heard!;
  return installationOf({ ...demo, listener }, setup);
}

const figures = (name: string) => ruleFigures(mounted(name), demo.air);

/** Level at 300 Hz with a cone that moves alike, by the wave solution. */
function at300(installation: Installation, listener: Listener): number {
  const grid = Float64Array.of(300);
  return levelDb(waveSolution(installation, demo.air, listener, grid, 'ideal', { accuracy: 'draft' }))[0];
}

const inHand = (name: string): number => at300(mounted(name), demo.listener);
const WHOLE = { abs: 0.5, because: 'whole decibels' };

test('takes ten minutes, and is a script that a bench can hold', () => {
  const minutes = script.reduce((sum, one) => sum + one.minutes, 0);
  close(minutes, 10, { abs: 1e-9, because: 'sums of tenths' });
  const bench = { ...demo, script };
  expect(readBenchFile(writeBenchFile(bench)).script).toEqual(script);
});

test('shows every kind of scene, both places, both loudnesses and a moved lever, of mounts that can be built', () => {
  expect(new Set(script.map(({ shows }) => shows)).size).toBe(4);
  const heard = script.flatMap((one) => one.heard ?? []);
  expect(heard.some(({ sameLoudness }) => sameLoudness)).toBe(true);
  expect(heard.some(({ listener }) => listener.board)).toBe(true);
  expect(new Set(heard.map(({ sound }) => JSON.stringify(sound))).size).toBe(2);
  for (const { name, heard } of script)
    if (heard) expect(() => checkInstallation(mounted(name)), name).not.toThrow();
  // Nobody has to ask what to say.
  expect(script.every(({ notes }) => notes.length > 10)).toBe(true);
});

test('each is a script of its own', () => {
  demoScript()[1].heard!.setup.name = 'changed';
  expect(demoScript()[1].heard!.setup.name).toBe('Free air');
});

test('the ways round are as long as is said', () => {
  for (const [name, mm] of [
    ['Round the edge', 28],
    ['A small plate', 60],
    ['A large plate', 102]
  ] as const) {
    close(figures(name).string! * 1000, mm, { abs: 0.5, because: 'whole millimetres' });
    expect(scene(name).notes).toContain(`${mm} mm`);
  }
  expect(scene('A small plate').heard!.setup.mount).toMatchObject({ length: 0.06, width: 0.06 });
  expect(scene('A large plate').heard!.setup.mount).toMatchObject({ length: 0.152, width: 0.102 });
});

test('twice as far round is 6 dB more below, the plate and the body are as much louder at 300 Hz as is said', () => {
  // The low end of an open mount is in proportion to its arm (docs/models/rule-of-thumb.md).
  close(20 * Math.log10(2), 6, { abs: 0.05, because: 'a tenth of a decibel' });
  expect(scene('The cure').text).toContain('Twice as far:\n6 dB more');
  close(inHand('A large plate') - inHand('The bare speaker'), 13, WHOLE);
  expect(scene('A large plate').notes).toContain('At 300 Hz that is 13 dB more than the bare speaker.');
  expect(Math.abs(inHand('The cab body') - inHand('A large plate'))).toBeLessThan(1);
  expect(scene('The cab body').notes).toContain('At 300 Hz it does as well as the flat one, within 1 dB.');
});

test('the body rings and the box lifts the resonance where is said', () => {
  close(figures('The body rings').ring!, 1500, { abs: 50, because: 'a tenth of a kilohertz' });
  expect(scene('The body rings').notes).toContain('about 1500 Hz');
  const { box } = figures('The closed box');
  const { mms, cms } = mounted('The closed box').speaker.motor;
  close(1 / (2 * Math.PI * Math.sqrt(mms * cms)), 350, { abs: 5, because: 'tens of hertz' });
  close(box!.fc, 540, { abs: 5, because: 'tens of hertz' });
  expect(scene('The closed box').notes).toContain('from 350 to 540 Hz');
});

test('the board takes from the plate and gives to the box what is said, where the scene listens', () => {
  const by = (name: string): number => {
    const installation = mounted(name);
    const { listener } = scene(name).heard!;
    const [free, without] = [
      { ...installation, board: undefined },
      { ...listener, board: undefined }
    ];
    return at300(installation, listener) - at300(free, without);
  };
  close(by('The plate over the board'), -12, WHOLE);
  close(by('The box over the board'), 6, WHOLE);
  expect(scene('The plate over the board').notes).toContain('takes 12 dB from the plate');
  expect(scene('The box over the board').notes).toContain('gains 6 dB');
  expect(mounted('As it runs').board).toMatchObject({ above: 0.014 });
  expect(scene('As it runs').notes).toContain('14 mm above the board');
});
