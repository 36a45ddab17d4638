import { checkInstallation } from '../../src/lib/acoustics/mounts/check-installation.js';
import type { Installation } from '../../src/lib/acoustics/installation.js';
import { boardKnob } from '../../src/lib/acoustics/mounts/board-knob.js';
import type { Mount } from '../../src/lib/acoustics/mounts/mount.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { knobsOf, withKnob } from '../../src/lib/acoustics/mounts/size-knobs.js';
import { random } from '../../src/lib/sounds/blocks/random.js';

const ROOMY: Mount[] = [
  { kind: 'plate', shape: 'rectangle', length: 0.15, width: 0.12, offset: [0, 0] },
  { kind: 'plate', shape: 'round', diameter: 0.15, offset: [0, 0] },
  { kind: 'shell', length: 0.15, width: 0.06, height: 0.06, ends: 'closed', offset: 0 },
  { kind: 'shell', length: 0.15, width: 0.06, height: 0.06, ends: 'open', offset: 0 },
  { kind: 'box', length: 0.07, width: 0.06, depth: 0.03 }
];

/** Every speaker in every kind of mount that has sizes, lying along and across, where it fits. */
export function everyInstallation(): Installation[] {
  return Object.values(SPEAKERS).flatMap((speaker) =>
    ROOMY.flatMap((mount) =>
      ([0, 90] as const).map((turn) => ({ speaker, mount, turn })).filter((one) => fits(one))
    )
  );
}

/** The same installation with each of its knobs turned somewhere within its range, one after the other. */
export function shaken(installation: Installation, seed: number): Installation {
  const { uniform } = random(seed);
  let { mount } = installation;
  for (const { key } of knobsOf(installation)) {
    const knob = knobsOf({ ...installation, mount }).find((one) => one.key === key)!;
    mount = withKnob(mount, key, knob.min + (knob.max - knob.min) * uniform());
  }
  const turned = { ...installation, mount };
  const height = boardKnob(turned);
  if (!height || !installation.board) return turned;
  const above = height.min + (height.max - height.min) * uniform();
  return { ...turned, board: { ...installation.board, above } };
}

export function fits(installation: Installation): boolean {
  try {
    checkInstallation(installation);
    return true;
  } catch {
    return false;
  }
}
