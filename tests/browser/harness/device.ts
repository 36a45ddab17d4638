import { clickLevel, countClicks } from '../../helpers/click-level.js';
import { recordingOf, type Figures } from './clicks.js';
import { openRecordedRoom } from './recorded-room.js';
import { turn, type KnobName } from './turns.js';

export async function steady(): Promise<Figures> {
  const recorded = await openRecordedRoom(5);
  return clickLevel(await recordingOf(recorded, ({ wait }) => wait(2)), recorded.room.sampleRate);
}

/** How often it clicks above `leastDb` while these knobs are turned at random, and how loud it is. */
export async function clicksWhileTurning(
  names: KnobName[],
  seconds: number,
  leastDb: number
): Promise<{ clicks: number; peak: number }> {
  const recorded = await openRecordedRoom(5);
  const recording = await recordingOf(recorded, () => turn(recorded, names, seconds));
  const { sampleRate } = recorded.room;
  return {
    clicks: countClicks(recording, sampleRate, leastDb),
    peak: clickLevel(recording, sampleRate).peak
  };
}
