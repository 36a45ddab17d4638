import { clickLevel } from '../../helpers/click-level.js';
import { recordingOf, type Figures } from './clicks.js';
import { growingPlate } from './demo-filters.js';
import { inDrivenRoom } from './driven-room.js';
import { irregular } from './irregular.js';
import type { RecordedRoom } from './recorded-room.js';
import { turn, type KnobName } from './turns.js';

/** The clicks while `act` does its work, which takes at most so many seconds. */
async function during(seconds: number, act: (recorded: RecordedRoom) => Promise<void>): Promise<Figures> {
  return inDrivenRoom({ branches: 5, seconds: seconds + 2 }, async (recorded) =>
    clickLevel(await recordingOf(recorded, act), recorded.room.sampleRate)
  );
}

export function steady(): Promise<Figures> {
  return during(2, ({ wait }) => wait(2));
}

/** Numeral keys mashed: another mount after irregular pauses. */
export function mashed(seconds: number, least: number, most: number): Promise<Figures> {
  return during(seconds + most, async ({ room, wait }) => {
    const random = irregular(7);
    for (let spent = 0; spent < seconds;) {
      room.hear(Math.floor(random(0, 5)));
      const pause = random(least, most);
      await wait(pause);
      spent += pause;
    }
  });
}

/** A size dragged: a changed impulse response 60 times a second. */
export function dragged(seconds: number): Promise<Figures> {
  const plates = growingPlate(Math.round(60 * seconds), 48000);
  return during(seconds + 1, async ({ room, wait }) => {
    room.hear(1);
    for (const plate of plates) {
      room.setBranch(1, plate);
      await wait(1 / 60);
    }
  });
}

/** These knobs turned at random. */
export function turning(names: KnobName[], seconds: number): Promise<Figures> {
  return during(seconds + 1, (recorded) => turn(recorded, names, seconds));
}

/**
 * Blind switches: to these branches one after the other, 0.4 s apart, from branch 0. For each the samples from its key to where it is
 * silent, to where sound comes back, and whether anything was heard between.
 */
export function blindSwitches(
  branches: number[]
): Promise<{ fell: number; rose: number; between: number }[]> {
  return inDrivenRoom({ branches: 5, seconds: branches.length * 0.4 + 3 }, async (recorded) => {
    const pressed: number[] = [];
    const recording = await recordingOf(recorded, async ({ room, wait, frame }) => {
      const start = frame();
      room.hear(0);
      await wait(0.5);
      for (const branch of branches) {
        pressed.push(frame() - start);
        room.hearAcrossPause(branch);
        await wait(0.4);
      }
    });
    const silence = 1e-5 * recording.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
    return pressed.map((from) => {
      const after = recording.subarray(from, from + 19_200);
      const middle = Math.round(0.06 * 48_000);
      let [fell, rose] = [middle, middle];
      while (fell > 0 && Math.abs(after[fell - 1]) <= silence) fell--;
      while (rose < after.length && Math.abs(after[rose]) <= silence) rose++;
      const between = after.subarray(fell, rose).reduce((most, x) => Math.max(most, Math.abs(x)), 0);
      return { fell, rose, between };
    });
  });
}
