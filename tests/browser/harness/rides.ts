import { along, pulsesOf } from '../../../src/lib/sounds/motion/course.js';
import { settledAt, type Motion } from '../../../src/lib/sounds/motion/motion.js';
import { renderLoop, renderRide, wayTo } from '../../../src/lib/sounds/motion/ride.js';
import { clickLevel } from '../../helpers/click-level.js';
import { CLICKER, type Clicker } from '../../helpers/clicker.js';
import type { MovingSource } from '../../../src/lib/sounds/sound-kind.js';
import type { Figures } from './clicks.js';
import { type DrivenRoom, inDrivenRoom } from './driven-room.js';

/** The clicker with thumps that hold nothing above 1 kHz, so that whatever is above it is a click. */
const THUMPER: MovingSource<Clicker> = {
  ...CLICKER,
  render: (_, course, span) => {
    const sound = new Float32Array(span.length);
    for (const { at, number } of pulsesOf(course, 4)) {
      const size = (number % 4 === 0 ? 1 : 0.5) * (0.3 + 0.6 * along(course, course.effort, at));
      addHump(sound, span.cyclic, at, 0.004 * span.sampleRate, size);
    }
    return sound;
  }
};

/** Adds sin⁶ over its width from a real place on: what it holds above 1 kHz is below −150 dB. */
function addHump(sound: Float32Array, cyclic: boolean, at: number, width: number, size: number): void {
  for (let i = Math.ceil(at); i < at + width; i++) {
    const place = cyclic ? i % sound.length : i;
    if (place < sound.length) sound[place] += size * Math.sin((Math.PI * (i - at)) / width) ** 6;
  }
}

const AT_FIRST: Clicker = { notch: 4, seed: 1 };

/** Seconds from one throw of the lever to the next, and how long before it its ride is handed over. */
const EVERY = 0.5;
const AHEAD = 0.1;

interface Thrown extends Figures {
  quietest: number;
  shortestGap: number;
}

/**
 * The lever thrown from 0 to 8 and back within a second, again and again, then left alone while the page is held up for
 * two seconds: a ride must come to its loop without any help.
 */
export function thrown(sampleRate: number): Promise<Thrown> {
  const rides = ridesOf([8, 0, 8, 3, 8, 0, 6], sampleRate);
  return inDrivenRoom({ branches: 1, seconds: 10, sampleRate }, (recorded) => throwIn(recorded, rides));
}

async function throwIn(
  { room, wait, hold, frame, finish }: DrivenRoom,
  rides: ReturnType<typeof ridesOf>
): Promise<Thrown> {
  const { sampleRate } = room;
  const unit = new Float32Array(2048);
  unit[0] = 1;
  room.setBranch(0, unit);
  const begun = room.now + 0.05;
  room.setSound(renderLoop(THUMPER, AT_FIRST, sampleRate), { at: begun });
  await room.play();
  await wait(1);
  const from = frame();
  for (const { after, samples, loopFrom } of rides) {
    await wait(begun + after - AHEAD - room.now);
    room.setSound(samples, { fade: 0, equalPower: false, loopFrom, at: begun + after });
  }
  await wait(AHEAD);
  await hold(2);
  await wait(2);
  const to = frame();
  const recording = (await finish()).subarray(from, to);
  const step = Math.round(0.25 * sampleRate);
  let quietest = Infinity;
  for (let i = 0; i + step <= recording.length; i += step)
    quietest = Math.min(
      quietest,
      Math.sqrt(recording.subarray(i, i + step).reduce((sum, x) => sum + x * x, 0) / step)
    );
  return { ...clickLevel(recording, sampleRate), quietest, shortestGap: shortestGap(recording, sampleRate) };
}

/** The rides to these notches, one after the other, each with the time after the first sound at which it begins. */
function ridesOf(notches: number[], sampleRate: number) {
  let now = AT_FIRST;
  let way: Motion[] = [settledAt(THUMPER.target(now))];
  let begun = 0;
  return notches.map((notch, i) => {
    const after = 1.5 + EVERY * i;
    const ticks = Math.round((after - begun) * 1000);
    const rest = settledAt(THUMPER.target(now));
    const motion = way[ticks] ?? { ...rest, turns: (rest.speed * (ticks - way.length + 1)) / 1000 };
    now = { notch, seed: 1 };
    way = wayTo(THUMPER, now, motion);
    begun = after;
    return { after, ...renderRide(THUMPER, now, motion, sampleRate) };
  });
}

/** The shortest time between two humps: where two machines sounded side by side, it would be far too short. */
function shortestGap(recording: Float32Array, sampleRate: number): number {
  let shortest = Infinity;
  let last = -Infinity;
  for (let i = 1; i < recording.length; i++) {
    if (recording[i - 1] > 0.03 || recording[i] <= 0.03) continue;
    shortest = Math.min(shortest, (i - last) / sampleRate);
    last = i;
  }
  return shortest;
}
