import { growingPlate } from './demo-filters.js';
import { irregular } from './irregular.js';
import { programme } from './programme.js';
import type { RecordedRoom } from './recorded-room.js';

type Random = (least: number, most: number) => number;
type Knob = (room: RecordedRoom['room'], random: Random) => unknown;

const horn = programme(48000, [311, 370, 466], 0.1);
const sounds = [programme(48000), programme(48000, [97, 211, 487, 803])];
const plates = growingPlate(30, 48000);

/** Every knob of the room, turned to somewhere. */
const KNOBS = {
  hear: (room, random) => room.hear(Math.floor(random(0, 5))),
  hearAcrossPause: (room, random) => room.hearAcrossPause(Math.floor(random(0, 5))),
  setBranch: (room, random) => room.setBranch(1, plates[Math.floor(random(0, plates.length))]),
  setBenchGain: (room, random) => room.setBenchGain(random(0.2, 1), random(0, 0.3)),
  setVolume: (room, random) => room.setVolume(random(0.2, 1)),
  blow: (room, random) => room.blow(random(0, 1) < 0.5),
  setSound: (room, random) =>
    room.setSound(sounds[Math.floor(random(0, 2))], { fade: random(0, 0.3), equalPower: random(0, 1) < 0.7 }),
  silence: (room, random) => room.silence(random(0, 1) < 0.4),
  playOrStop: (room, random) => (random(0, 1) < 0.4 ? room.stop() : room.play())
} satisfies Record<string, Knob>;

export type KnobName = keyof typeof KNOBS;

/** Turns these knobs at random, after pauses of 5 to 120 ms. */
export async function turn({ room, wait }: RecordedRoom, names: KnobName[], seconds: number): Promise<void> {
  const random = irregular(11);
  room.setHorn(horn);
  for (let spent = 0; spent < seconds;) {
    await KNOBS[names[Math.floor(random(0, names.length))]](room, random);
    const pause = random(0.005, 0.12);
    await wait(pause);
    spent += pause;
  }
}
