import { demoFilters } from './demo-filters.js';
import { irregular } from './irregular.js';
import { programme } from './programme.js';
import { inDrivenRoom } from './driven-room.js';
import type { RecordedRoom } from './recorded-room.js';

/**
 * All mounts alike: then switching, and exchanging a filter for itself, must change nothing at all. The largest
 * difference from the second before, in dB against the peak.
 */
export function changeForTheSame(what: 'hear' | 'setBranch', seconds: number): Promise<number> {
  return inDrivenRoom({ branches: 4, seconds: seconds + 3 }, (recorded) => changeIn(recorded, what, seconds));
}

async function changeIn(
  { room, wait, frame, finish }: RecordedRoom,
  what: 'hear' | 'setBranch',
  seconds: number
): Promise<number> {
  const plate = demoFilters(48000)[1];
  for (let i = 0; i < 4; i++) room.setBranch(i, plate);
  room.setSound(programme(room.sampleRate));
  await room.play();
  await wait(1);
  const from = frame();
  await wait(1);
  const random = irregular(3);
  for (let spent = 0; spent < seconds;) {
    if (what === 'hear') room.hear(Math.floor(random(0, 4)));
    else room.setBranch(0, plate);
    const pause = random(0.005, 0.08);
    await wait(pause);
    spent += pause;
  }
  const recording = (await finish()).subarray(from);
  let peak = 0;
  let worst = 0;
  for (let n = room.sampleRate; n < recording.length; n++) {
    peak = Math.max(peak, Math.abs(recording[n]));
    worst = Math.max(worst, Math.abs(recording[n] - recording[n - room.sampleRate]));
  }
  return 20 * Math.log10(worst / peak);
}

/** Frames from the call of `hear`, or `setBranch`, to the first sample that is changed by 1 % of the peak. */
export function latencies(what: 'hear' | 'setBranch', times: number): Promise<number[]> {
  return inDrivenRoom({ branches: 2, seconds: 2 + 1.2 * times }, (recorded) =>
    latenciesIn(recorded, what, times)
  );
}

async function latenciesIn(
  { room, wait, frame, finish }: RecordedRoom,
  what: 'hear' | 'setBranch',
  times: number
): Promise<number[]> {
  const filters = demoFilters(48000);
  room.setBranch(0, filters[1]);
  room.setBranch(1, filters[0]);
  room.setSound(programme(room.sampleRate));
  await room.play();
  await wait(1);
  const calls: number[] = [];
  const random = irregular(5);
  for (let i = 0; i < times; i++) {
    await wait(1.1 + random(0, 0.02));
    calls.push(frame());
    if (what === 'hear') room.hear((i + 1) % 2);
    else room.setBranch(0, filters[(i + 1) % 2 === 0 ? 1 : 0]);
  }
  await wait(0.2);
  const recording = await finish();
  const peak = recording.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  return calls.map((call) => {
    for (let n = call; n < recording.length; n++)
      if (Math.abs(recording[n] - recording[n - room.sampleRate]) > 0.01 * peak) return n - call;
    return Infinity;
  });
}
