import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Listener } from '../../../../src/lib/acoustics/listener.js';
import { fieldOnGrid, type FieldImage } from '../../../../src/lib/waves/field/field-on-grid.js';
import { puffImage } from '../../../../src/lib/waves/field/puff.js';
import { polarPattern } from '../../../../src/lib/waves/field/polar-pattern.js';
import { heardResponse, type HeardWaves } from '../../../../src/lib/waves/curve/heard-waves.js';
import { solveWave } from '../../../../src/lib/waves/solve/wave-problem.js';
import { solutionKey, solveMount, waveResponse } from '../../../../src/lib/waves/wave-solution.js';
import { WaveScheduler } from '../../../../src/lib/workers/waves/wave-scheduler.js';
import type { WaveQuestion, WaveSaid } from '../../../../src/lib/workers/waves/wave-protocol.js';
import { AIR, DEMO, IN_FRONT, ovalIn } from '../../../helpers/demo-installations.js';

afterEach(() => vi.unstubAllGlobals());

/** A scheduler, what it says, and a way to wait for it. */
function manned() {
  const said: WaveSaid[] = [];
  const transferred: Transferable[][] = [];
  let heard: (() => void)[] = [];
  const scheduler = new WaveScheduler((one, transfer) => {
    said.push(one);
    transferred.push(transfer);
    for (const listen of heard) listen();
  });
  let lastId = 0;
  /** Puts a question on the scheduler. */
  const put = (question: WaveQuestion, urgent = false): number => {
    scheduler.take({ id: ++lastId, question, urgent });
    return lastId;
  };
  /** Resolves as soon as the scheduler has said something of which this is true. */
  const until = (is: (one: WaveSaid) => boolean) =>
    new Promise<WaveSaid>((resolve) => {
      const listen = () => {
        const found = said.find(is);
        if (!found) return;
        heard = heard.filter((other) => other !== listen);
        resolve(found);
      };
      heard.push(listen);
      listen();
    });
  const endOf = (id: number) => until((one) => one.id === id && one.said !== 'progress');
  /** What comes of a question, and in how many steps. */
  const ask = async (question: WaveQuestion) => {
    const id = put(question);
    const end = await endOf(id);
    if (end.said !== 'result') throw new Error(end.said === 'error' ? end.message : end.said);
    const steps = said.filter((one) => one.id === id).length;
    return { result: end.result, holds: end.holds, steps, transfer: transferred[said.indexOf(end)] };
  };
  return { scheduler, said, put, until, endOf, ask };
}

const shell = ovalIn({
  kind: 'shell',
  length: 0.08,
  width: 0.03,
  height: 0.03,
  ends: 'closed',
  offset: 0.01
});
const box = DEMO['closed box'];
const DRAFT = { accuracy: 'draft' } as const;
const ASIDE: Listener = { angleDeg: 60, plane: 'length' };
const NEAR: Listener = { angleDeg: -30, plane: 'width', distance: 0.5 };

const hear = (installation = shell, listeners: Listener[] = [IN_FRONT]): WaveQuestion => ({
  kind: 'hear',
  installation,
  air: AIR,
  accuracy: 'draft',
  listeners
});
const anglesDeg = Float64Array.from({ length: 11 }, (_, i) => 18 * i);
const polar = (frequency: number, installation = shell, distance?: number): WaveQuestion => ({
  kind: 'polar',
  installation,
  air: AIR,
  accuracy: 'draft',
  frequency,
  plane: 'width',
  ...(distance === undefined ? {} : { distance }),
  anglesDeg
});
const grid = {
  plane: 'length',
  left: -0.1,
  right: 0.1,
  bottom: -0.1,
  top: 0.05,
  columns: 6,
  rows: 5
} as const;
const field = (...frequencies: number[]): WaveQuestion => ({
  kind: 'field',
  installation: shell,
  air: AIR,
  accuracy: 'draft',
  frequencies: Float64Array.from(frequencies),
  grid
});

describe('answers', () => {
  const mount = solveMount(shell, AIR, DRAFT);

  test('what listeners hear is the wave solution, however often it is asked', async () => {
    const { ask } = manned();
    const frequency = Float64Array.of(0, 100, 1000, 2500, 5000);
    const first = await ask(hear(shell, [ASIDE, NEAR]));
    const again = await ask(hear(shell, [NEAR, IN_FRONT]));
    const pairs = [
      ...(first.result as HeardWaves[]).map((heard, i) => [heard, [ASIDE, NEAR][i]] as const),
      ...(again.result as HeardWaves[]).map((heard, i) => [heard, [NEAR, IN_FRONT][i]] as const)
    ];
    for (const [heard, listener] of pairs)
      expect(heardResponse(heard, shell, AIR, frequency)).toEqual(waveResponse(mount, listener, frequency));
    expect(first.transfer).toEqual([]);
  });

  test('levels and images are those of the wave solved at that frequency, whether or not the mount was heard before', async () => {
    const { curve } = mount;
    const state = solveWave(curve.problem, (2 * Math.PI * 1234) / curve.c);
    for (const heardBefore of [false, true]) {
      const { ask } = manned();
      if (heardBefore) await ask(hear());
      const levels = await ask(polar(1234));
      expect(levels.result).toEqual(polarPattern(curve.problem, state, { plane: 'width' }, anglesDeg));
      expect(levels.transfer).toEqual([(levels.result as Float64Array).buffer]);
      const near = (await ask(polar(1234, shell, 0.3))).result;
      expect(near).toEqual(polarPattern(curve.problem, state, { plane: 'width', distance: 0.3 }, anglesDeg));
      const { result, transfer } = await ask(field(500, 1234));
      const [, image] = result as FieldImage[];
      expect(image).toEqual(fieldOnGrid(curve.problem, state, grid));
      expect(transfer.length).toBe(4);
    }
  });

  test('the images of a puff are its harmonics, of which those of a tone at the same frequency are none', async () => {
    const { curve } = mount;
    const { ask } = manned();
    const { result, transfer } = await ask({ ...field(400, 600), kind: 'puff' } as WaveQuestion);
    expect(result).toEqual([400, 600].map((f) => puffImage(curve.problem, curve.c, f, grid)));
    expect(transfer.length).toBe(4);
    expect((await ask(field(400, 600))).result).not.toEqual(result);
  });

  test('progress rises to 1, a step a frequency', async () => {
    const { said, put, endOf } = manned();
    const id = put(hear());
    const end = await endOf(id);
    const shares = said.flatMap((one) => (one.id === id && one.said === 'progress' ? [one.share] : []));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares[0]).toBe(0);
    expect(shares.at(-1)).toBe(1);
    const [{ solved }] = (end as { result: HeardWaves[] }).result;
    // the first is the mesh, the last the listener
    expect(shares.length).toBe(solved + 2);
  });

  test('what is impossible is said in a sentence, and the scheduler goes on', async () => {
    const { ask } = manned();
    const wide = ovalIn({ kind: 'plate', shape: 'rectangle', length: 0, width: 0.1, offset: [0, 0] });
    await expect(ask(hear(wide))).rejects.toThrow(/^plate length must be within 1 … 3000 mm, got 0$/);
    await expect(ask(polar(1000, wide))).rejects.toThrow(/^plate length must be within/);
    await expect(ask(polar(1000, shell, 0))).rejects.toThrow(/^distance of the listener must be within/);
    await expect(ask({ ...polar(1000), air: { temperatureC: 99 } })).rejects.toThrow(/^temperature must/);
    for (const frequency of [0, NaN, 3001])
      await expect(ask(polar(frequency))).rejects.toThrow(
        `frequency of a wave picture of this mount must be within 1 … 3000 Hz, got ${frequency}`
      );
    await expect(ask({ ...hear(), kind: 'weather' } as unknown as WaveQuestion)).rejects.toThrow(
      'nothing here answers "weather"'
    );
    expect((await ask(hear(box))).result).toHaveLength(1);
  });
});

describe('what was found before', () => {
  test('is not done again: another listener takes one step more than its answer', async () => {
    const { ask } = manned();
    expect((await ask(hear())).steps).toBeGreaterThan(10);
    expect((await ask(hear(shell, [ASIDE]))).steps).toBe(2);
    // another motor hears the same waves
    const { motor } = shell.speaker;
    const heavier = { ...shell, speaker: { ...shell.speaker, motor: { ...motor, mms: 2 * motor.mms } } };
    expect((await ask(hear(heavier))).steps).toBe(2);
    expect((await ask({ ...hear(), air: { temperatureC: 21 } })).steps).toBeGreaterThan(10);
  });

  test('is shared by pictures: the matrices of all frequencies, and the solution at one', async () => {
    const { ask } = manned();
    // matrices, solution, and eight angles at a time
    expect((await ask(polar(700))).steps).toBe(1 + 1 + 2 + 1);
    expect((await ask(polar(800))).steps).toBe(1 + 2 + 1);
    expect((await ask(polar(700, shell, 0.3))).steps).toBe(2 + 1);
    // two solutions known, one new
    expect((await ask(field(700, 800, 900))).steps).toBe(1 + 1 + 2 + 1);
    await ask(hear(box));
    expect((await ask(polar(900, box))).steps).toBe(1 + 2 + 1);
  });

  test('is told with every answer', async () => {
    const { ask } = manned();
    const [one, other] = [shell, box].map((installation) => solutionKey(installation, AIR, DRAFT));
    expect((await ask(polar(700))).holds).toEqual({ solved: [], meshed: [one] });
    expect((await ask(hear(box))).holds).toEqual({ solved: [other], meshed: [one, other] });
  });
});

describe('between steps', () => {
  test('a dropped question ends after the step it is in, and one dropped at once is never begun', async () => {
    const { scheduler, said, put, until, endOf } = manned();
    const first = put(hear());
    const second = put(hear(box));
    scheduler.take({ drop: second });
    await until((one) => one.id === first && one.said === 'progress' && one.share > 0.2);
    scheduler.take({ drop: first });
    const third = put(hear(box));
    await endOf(third);
    expect(said.filter((one) => one.id === second).map((one) => one.said)).toEqual(['dropped']);
    const ofFirst = said.filter((one) => one.id === first);
    expect(ofFirst.at(-1)!.said).toBe('dropped');
    expect(ofFirst.length).toBeLessThan(10);
    scheduler.take({ drop: third });
    expect(said.at(-1)).toMatchObject({ id: third, said: 'result' });
  });

  test('a message of another channel gets in', async () => {
    const { scheduler, said, put, endOf } = manned();
    const { port1, port2 } = new MessageChannel();
    const long = put(hear());
    port1.onmessage = ({ data }) => {
      port1.close();
      scheduler.take(data);
    };
    port2.postMessage({ drop: long });
    await endOf(long);
    expect(said.at(-1)).toMatchObject({ id: long, said: 'dropped' });
    expect(said.length).toBeLessThan(5);
  });

  test('every step has a turn of its own, however many questions there are', async () => {
    let turns = 0;
    vi.stubGlobal(
      'MessageChannel',
      class extends MessageChannel {
        constructor() {
          super();
          turns++;
        }
      }
    );
    const { said, put, endOf } = manned();
    for (const frequency of [500, 600, 700]) put(polar(frequency, box));
    await endOf(3);
    // the last finds nothing to do
    expect(turns).toBe(said.length + 1);
  });

  test('a scheduler that has rested begins again', async () => {
    const { ask } = manned();
    await ask(polar(500, box));
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect((await ask(polar(500, box))).steps).toBe(3);
  });

  test('an urgent question begins, and the long one goes on where it was', async () => {
    const { said, put, until, endOf } = manned();
    const long = put(hear());
    await until((one) => one.said === 'progress' && one.share > 0.2);
    const before = said.length;
    const urgent = put(hear(box), true);
    const newer = put(polar(900, box), true);
    await endOf(urgent);
    const ids = said.slice(before).map(({ id }) => id);
    // the newest first, and none in between
    expect(ids).toEqual([...ids].sort((a, b) => b - a));
    expect(new Set(ids)).toEqual(new Set([newer, urgent]));
    await endOf(long);
    const alone = manned();
    await alone.endOf(alone.put(hear()));
    expect(said.filter((one) => one.id === long)).toHaveLength(alone.said.length);
  });
});
