import { highPass } from '../../helpers/high-pass.js';
import { demoFilters } from './demo-filters.js';
import { programme } from './programme.js';
import { openRecordedRoom } from './recorded-room.js';

function peakOf(samples: Float32Array | Float64Array): number {
  let peak = 0;
  for (const x of samples) peak = Math.max(peak, Math.abs(x));
  return peak;
}

/** Peaks of the output while the sound starts for the first time, plays, is silenced, comes back and is stopped. */
export async function startAndStop() {
  const { room, wait, frame, finish } = await openRecordedRoom(1);
  room.setBranch(0, demoFilters(48000)[1]);
  room.setSound(programme(room.sampleRate));
  const marks: Record<string, [number, number]> = {};
  const mark = async (name: string, after: number, seconds: number) => {
    await wait(after);
    const from = frame();
    await wait(seconds);
    marks[name] = [from, frame()];
  };
  await mark('beforePlay', 0.3, 0.2);
  const played = frame();
  await room.play();
  await mark('playing', 0.6, 0.3);
  room.silence(true);
  await mark('silenced', 0.15, 0.2);
  room.silence(false);
  await mark('heardAgain', 0.15, 0.3);
  room.stop();
  await mark('stopped', 0.15, 0.2);
  const recording = await finish();
  const peaks = Object.fromEntries(
    Object.entries(marks).map(([name, [from, to]]) => [name, peakOf(recording.subarray(from, to))])
  );
  // From the first audible sample of the first play on, 10 ms at a time.
  const first = recording.findIndex((x, n) => n >= played && Math.abs(x) > 1e-6);
  const entrance = Array.from({ length: 40 }, (_, i) =>
    peakOf(recording.subarray(first + i * 480, first + (i + 1) * 480))
  );
  return { peaks, entrance };
}

/** What the ear check sends out: its peak, how long it is heard, and what it holds above 4 kHz. */
export async function earCheck() {
  const { room, finish } = await openRecordedRoom(1);
  room.setBranch(0, demoFilters(48000)[1]);
  room.setSound(programme(room.sampleRate));
  await room.earCheck();
  const recording = await finish();
  const heard = (x: number) => Math.abs(x) > 1e-4;
  const seconds = (recording.findLastIndex(heard) - recording.findIndex(heard)) / room.sampleRate;
  const above = highPass(recording, { sampleRate: room.sampleRate, frequency: 4000, transition: 1000 });
  return { peak: peakOf(recording), seconds, above: peakOf(above), playing: room.playing };
}
