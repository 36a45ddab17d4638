import { clickLevel } from '../../helpers/click-level.js';
import { demoFilters } from './demo-filters.js';
import { programme } from './programme.js';
import type { RecordedRoom } from './recorded-room.js';

/**
 * Plays the programme through the demo's mounts, waits a second and lets `act` do its work; the recording from then on,
 * at 48 kHz.
 */
export async function recordingOf(
  recorded: RecordedRoom,
  act: (recorded: RecordedRoom) => Promise<void>
): Promise<Float32Array> {
  const { room, wait, finish } = recorded;
  demoFilters(room.sampleRate).forEach((filter, i) => room.setBranch(i, filter));
  room.setSound(programme(room.sampleRate));
  await room.play();
  await wait(1);
  const from = recorded.frame();
  await act(recorded);
  await wait(0.1);
  return (await finish()).subarray(from);
}

export type Figures = ReturnType<typeof clickLevel>;
