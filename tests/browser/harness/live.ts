import { clickLevel } from '../../helpers/click-level.js';
import { demoFilters, growingPlate } from './demo-filters.js';
import { irregular } from './irregular.js';
import { programme } from './programme.js';
import { openRecordedRoom, type RecordedRoom } from './recorded-room.js';

export interface Figures {
  clickDb: number;
  clickFrame: number;
  peak: number;
}

/** Plays the programme through the demo's mounts, waits a second, lets `act` do its work and measures the clicks. */
export async function during(
  act: (recorded: RecordedRoom) => Promise<void>,
  filters = demoFilters(48000)
): Promise<Figures> {
  const recorded = await openRecordedRoom(filters.length);
  const { room, wait, finish } = recorded;
  filters.forEach((filter, i) => room.setBranch(i, filter));
  room.setSound(programme(room.sampleRate));
  await room.play();
  await wait(1);
  const from = recorded.frame();
  await act(recorded);
  await wait(0.1);
  return clickLevel((await finish()).subarray(from), room.sampleRate);
}

export function steady(): Promise<Figures> {
  return during(({ wait }) => wait(2));
}

/** Numeral keys mashed: another mount after irregular pauses. */
export function mashed(seconds: number, least: number, most: number): Promise<Figures> {
  return during(async ({ room, wait }) => {
    const random = irregular(7);
    for (let spent = 0; spent < seconds;) {
      room.hear(Math.floor(random(0, 5)));
      const pause = random(least, most);
      await wait(pause);
      spent += pause;
    }
  });
}

/** A size dragged: a changed impulse response 60 times a second; also what each call costs the main thread. */
export async function dragged(seconds: number): Promise<Figures & { callMs: number; worstCallMs: number }> {
  const plates = growingPlate(Math.round(60 * seconds), 48000);
  const costs: number[] = [];
  const figures = await during(async ({ room, wait }) => {
    room.hear(1);
    const began = performance.now();
    for (let i = 0; i < plates.length; i++) {
      const before = performance.now();
      room.setBranch(1, plates[i]);
      costs.push(performance.now() - before);
      await wait(Math.max(0, (began + ((i + 1) * 1000) / 60 - performance.now()) / 1000));
    }
  });
  costs.sort((a, b) => a - b);
  return { ...figures, callMs: costs[costs.length >> 1], worstCallMs: costs[costs.length - 1] };
}
