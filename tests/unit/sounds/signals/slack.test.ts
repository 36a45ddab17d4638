import { expect, test } from 'vitest';
import { filter, section } from '../../../../src/lib/sounds/blocks/filter.js';
import { type Slack, SLACK_PRESETS } from '../../../../src/lib/sounds/signals/slack.js';
import { SLACK_SOURCE, slackTimes } from '../../../../src/lib/sounds/signals/slack-source.js';
import { close } from '../../../helpers/close.js';

const RATE = 16000;
const slack = (change: Partial<Slack>): Slack => ({ ...SLACK_PRESETS[0], ...change });
const energy = (x: Float32Array) => x.reduce((sum, v) => sum + v * v, 0);

test('couplers meet one after another, on the average at the interval of the knob, faster toward the end', () => {
  for (const cars of [2, 3, 14, 40]) {
    const times = slackTimes(slack({ cars, interval: 0.25 }));
    expect(times).toHaveLength(cars);
    close(times[cars - 1], 0.25 * (cars - 1), { abs: 1e-9, because: 'the mean of all intervals' });
    times.slice(1).forEach((t, i) => expect(t).toBeGreaterThan(times[i]));
  }
  const times = slackTimes(slack({ cars: 40 }));
  expect(times[20] - times[0]).toBeGreaterThan(times[39] - times[19]);
  expect(slackTimes(slack({ cars: 1 }))).toEqual([0]);
});

test('each meeting is heard where it should be', () => {
  const change = { cars: 5, interval: 0.7 };
  const loop = SLACK_SOURCE.render(slack(change), RATE);
  for (const t of slackTimes(slack(change))) {
    const at = Math.round((0.1 + t) * RATE);
    const before = energy(loop.subarray(at - 0.05 * RATE, at - 5));
    expect(energy(loop.subarray(at, at + 0.05 * RATE))).toBeGreaterThan(10 * before);
  }
});

test('it runs away from the listener: the last is softer and duller than the first', () => {
  const change = { cars: 20, interval: 0.5 };
  const loop = SLACK_SOURCE.render(slack(change), RATE);
  const high = filter(loop, section('highPass', 1500, 0.7, RATE), { sampleRate: RATE, cyclic: true });
  const times = slackTimes(slack(change));
  const share = (car: number) => {
    const [from, until] = [0.1 + times[car], 0.1 + times[car] + 0.3].map((t) => Math.round(t * RATE));
    return { all: energy(loop.subarray(from, until)), high: energy(high.subarray(from, until)) };
  };
  const [near, far] = [0, 1, 2, 17, 18, 19].map(share).reduce(
    ([near, far], { all, high }, i) =>
      i < 3
        ? [{ all: near.all + all, high: near.high + high }, far]
        : [near, { all: far.all + all, high: far.high + high }],
    [
      { all: 0, high: 0 },
      { all: 0, high: 0 }
    ]
  );
  expect(far.all).toBeLessThan(0.3 * near.all);
  expect(far.high / far.all).toBeLessThan(0.5 * (near.high / near.all));
});

test('a hard meeting is brighter than a soft one', () => {
  const bright = (hardness: number) => {
    const loop = SLACK_SOURCE.render(slack({ hardness }), RATE);
    const high = filter(loop, section('highPass', 1000, 0.7, RATE), { sampleRate: RATE, cyclic: true });
    return energy(high) / energy(loop);
  };
  expect(bright(1)).toBeGreaterThan(3 * bright(0));
});
