import { ruleAnswer } from '../../src/lib/evaluation/answer.js';
import { compute } from '../../src/lib/evaluation/stand.js';
import { demoBench } from '../../src/lib/file/demo-bench.js';
import { installationOf } from '../../src/lib/file/installation-of.js';
import type { Mount } from '../../src/lib/acoustics/mounts/mount.js';
import { loopLoudness } from '../../src/lib/listening/loudness.js';
import { LoopFilter } from '../../src/lib/numeric/filter-with.js';
import type { GeneratedSound, MovingSound } from '../../src/lib/sounds/kinds.js';
import { loopStretch } from '../../src/lib/sounds/recording/loop-stretch.js';
import { usualSound } from '../../src/lib/sounds/roster.js';
import { SoundBank } from '../../src/lib/workers/sound/sound-bank.js';

/** The rate at which the page opens its audio context where the machine lets it. */
const SAMPLE_RATE = 48000;

/** How much louder a mount is than free air on a looped sound, computed here from the same pure functions. */
export function levelInNode(mount: Mount, loop: Float32Array): number {
  const file = demoBench();
  const [against, heard] = [{ kind: 'free' } as Mount, mount].map((one) => {
    const installation = installationOf(file, { ...file.setups[0], mount: one });
    const { impulseResponse } = compute(
      installation,
      file.air,
      ruleAnswer(installation, file.air, file.listener),
      SAMPLE_RATE
    );
    return loopLoudness(new LoopFilter(loop, impulseResponse.length).through(impulseResponse), SAMPLE_RATE);
  });
  return heard - against;
}

/** A sound as the page renders it. */
export function soundLoop(sound: GeneratedSound): Float32Array {
  return new SoundBank().loop(sound, SAMPLE_RATE);
}

/** The engine as the page renders it. */
export function engineLoop(notch = 4): Float32Array {
  return soundLoop({ ...(usualSound('diesel') as MovingSound), notch });
}

/** A recording of one channel at the rate of the page, looped as the page loops it. */
export function recordingLoop(samples: number[]): Float32Array {
  return loopStretch(Float32Array.from(samples), SAMPLE_RATE, 0, samples.length / SAMPLE_RATE);
}

/** The mounts of the bench one finds at first, in the order of their numerals. */
export function demoMount(numeral: number): Mount {
  return demoBench().setups[numeral - 1].mount;
}
