import { LIMITS } from '../acoustics/mounts/check-installation.js';
import type { Outline } from '../acoustics/outline.js';
import { defaultBodyVolume, defaultDepth } from '../acoustics/speaker/speakers.js';
import type { Mount } from '../acoustics/mounts/mount.js';
import { BenchFileError } from './bench-file-error.js';
import type { CheckedBenchFile } from './bench-file-schema.js';
import type { BenchFile, BenchSpeaker, Setup } from './bench-file.js';
import { quoted } from './json/quoted.js';
import type { Scene } from './scene.js';

type CheckedSetup = CheckedBenchFile['setups'][number];
type CheckedScene = NonNullable<CheckedBenchFile['script']>[number];

/**
 * The defaults that depend on the rest of the file: a speaker is called like its key, its cone, depth and
 * body follow from its frame; a setup takes the only speaker there is and is called like its mount.
 * @throws BenchFileError where a setup does not say which of several speakers it takes.
 */
export function withDefaults(checked: CheckedBenchFile): BenchFile {
  const speakers: Record<string, BenchSpeaker> = {};
  for (const [key, speaker] of Object.entries(checked.speakers)) {
    const depth = speaker.depth ?? atLeast(LIMITS.speakerDepth, defaultDepth(speaker.frame));
    speakers[key] = {
      name: speaker.name ?? key,
      frame: speaker.frame,
      depth,
      cone: speaker.cone ?? defaultCone(speaker.frame),
      ...(speaker.motor && { motor: speaker.motor }),
      bodyVolume: speaker.bodyVolume ?? defaultBodyVolume(speaker.frame, depth),
      ...(speaker.price !== undefined && { price: speaker.price })
    };
  }
  const keys = Object.keys(speakers);
  const setups = checked.setups.map((setup, i) => {
    const whole = wholeSetup(setup, `setups[${i}]`, keys);
    if (!keys.includes(whole.speaker))
      throw new BenchFileError(`setups[${i}].speaker ${quoted(whole.speaker)} is not among the speakers`);
    return whole;
  });
  const { script, ...rest } = checked;
  return {
    ...rest,
    speakers,
    setups,
    ...(script && { script: script.map((scene, i) => wholeScene(scene, i, keys)) })
  };
}

/** A scene outlives the speaker of its mount. */
function wholeScene({ heard, ...scene }: CheckedScene, i: number, keys: readonly string[]): Scene {
  if (!heard) return scene;
  return { ...scene, heard: { ...heard, setup: wholeSetup(heard.setup, `script[${i}].heard.setup`, keys) } };
}

function wholeSetup(setup: CheckedSetup, where: string, keys: readonly string[]): Setup {
  if (setup.speaker === undefined && keys.length !== 1)
    throw new BenchFileError(`${where} does not say which speaker it takes (${keys.length} are there)`);
  const { mount, turn, above, facing, second, wall, price, notes } = setup;
  return {
    name: setup.name ?? defaultSetupName(mount),
    speaker: setup.speaker ?? keys[0],
    mount,
    turn,
    ...(above !== undefined && { above }),
    ...(facing !== undefined && { facing }),
    ...(second && { second }),
    ...(wall !== undefined && { wall }),
    ...(price !== undefined && { price }),
    notes
  };
}

/** The cone most small speakers have: 0.85 of the frame's length and 0.80 of its width (common practice). */
function defaultCone(frame: Outline): Outline {
  const side = (share: number, length: number) => atLeast(LIMITS.speakerLength, share * length);
  if (frame.shape === 'round') return { shape: 'round', diameter: side(0.85, frame.diameter) };
  return { shape: 'ellipse', length: side(0.85, frame.length), width: side(0.8, frame.width) };
}

/** The least speaker that can be has a cone and a depth, too. */
function atLeast([least]: readonly [number, number], value: number): number {
  return Math.max(least, value);
}

/** What a mount is called where its setup has no name. */
function defaultSetupName(mount: Mount): string {
  if (mount.kind === 'plate') return mount.shape === 'round' ? 'Round plate' : 'Flat plate';
  return { free: 'Free air', shell: 'Shell', box: 'Closed box' }[mount.kind];
}
