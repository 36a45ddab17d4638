import { DrivenContext } from './driven-context.js';
// Only now: what is above must be there when the library is loaded.
import { AudioContext } from 'standardized-audio-context';
import { ListeningRoom } from '../../../src/lib/audio/listening-room.js';
import type { RecordedRoom } from './recorded-room.js';

/** A recorded room whose page can be held up. */
export interface DrivenRoom extends RecordedRoom {
  hold(seconds: number): Promise<void>;
}

/**
 * Lets `act` use a listening room on a driven clock (driven-context.ts) that ends after so many seconds.
 */
export async function inDrivenRoom<T>(
  { branches, seconds, sampleRate = 48000 }: { branches: number; seconds: number; sampleRate?: number },
  act: (recorded: DrivenRoom) => Promise<T>
): Promise<T> {
  DrivenContext.seconds = seconds;
  const context = new AudioContext({ sampleRate });
  await context.resume();
  const driven = DrivenContext.last;
  return driven.keepingTime(() =>
    act({
      room: new ListeningRoom(context, branches),
      frame: () => Math.round(context.currentTime * sampleRate),
      wait: (seconds) => driven.advance(seconds),
      hold: (seconds) => driven.hold(seconds),
      finish: async () => {
        const end = Math.round(context.currentTime * sampleRate);
        return (await driven.finish()).subarray(0, end);
      }
    })
  );
}
