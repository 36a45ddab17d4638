import type { GeneratedSound, MovingSound } from '../../src/lib/sounds/kinds.js';
import { movingSource } from '../../src/lib/sounds/sources.js';
import { settledAt } from '../../src/lib/sounds/motion/motion.js';
import { renderLoop, renderRide } from '../../src/lib/sounds/motion/ride.js';
import { LINESIDE, MACHINES, TEST_SIGNALS } from '../../src/lib/sounds/roster.js';
import { SoundBank } from '../../src/lib/workers/sound/sound-bank.js';
import type { SpeedCase } from './speed-case.js';

const SAMPLE_RATE = 48000;

const full = (sound: MovingSound): MovingSound => ({ ...sound, notch: 8 });

/** A case that makes samples, and tells how long they last. */
function making(name: string, make: () => Float32Array): SpeedCase {
  let length = 0;
  const run = () => {
    const samples = make();
    length = samples.length;
    return samples;
  };
  return { name, sound: () => length / SAMPLE_RATE, prepare: () => run };
}

/** A sound as the worker makes it when it is asked for the first time: with its alignment. */
function made(name: string, sound: GeneratedSound): SpeedCase {
  const bank = new SoundBank();
  let turn = 0;
  // Another seed each time: a machine that is known is not made again.
  const next = () => ({ ...sound, seed: (turn = (turn + 1) % 9000) }) as GeneratedSound;
  return making(name, () => bank.loop(next(), SAMPLE_RATE));
}

function ride(sound: MovingSound): SpeedCase {
  const kind = movingSource(sound);
  const from = settledAt(kind.target({ ...sound, notch: 0 }));
  const make = () => renderRide(kind, full(sound), from, SAMPLE_RATE).samples;
  return making(`${sound.name}: ride from 0 to 8, and loop`, make);
}

/** One loop at full load, made as a whole each time. */
function loopOnly(sound: MovingSound): SpeedCase {
  return making(`${sound.name}: loop at 8 alone`, () =>
    renderLoop(movingSource(sound), full(sound), SAMPLE_RATE)
  );
}

/** The first of each kind. */
function ofEachKind<S extends GeneratedSound>(sounds: readonly S[]): S[] {
  return sounds.filter(({ kind }, i) => sounds.findIndex((one) => one.kind === kind) === i);
}

const machines = ofEachKind(MACHINES);

/** What the first press of play waits for, what a moved lever waits for, and every other sound. */
const cases: SpeedCase[] = [
  ...machines.map((sound) => made(`${sound.name}: loop at 8, aligned`, full(sound))),
  ...machines.map(loopOnly),
  ...machines.map(ride),
  made('run past, 30 s', { ...MACHINES[0], runPast: true }),
  ...ofEachKind([...LINESIDE, ...TEST_SIGNALS]).map((sound) => made(sound.name, sound))
];

export default cases;
