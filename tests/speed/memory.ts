import { MACHINES } from '../../src/lib/sounds/roster.js';
import { SoundBank } from '../../src/lib/workers/sound/sound-bank.js';
import type { SpeedCase } from './speed-case.js';

/** What takes the most memory: the run past of half a minute. The machine itself has been made before. */
export const memory: SpeedCase = {
  name: 'memory for a run past of 30 s, at its most',
  prepare: () => {
    const bank = new SoundBank();
    bank.loop(MACHINES[0], 48000);
    return () => bank.loop({ ...MACHINES[0], runPast: true }, 48000);
  }
};
