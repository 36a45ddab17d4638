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
