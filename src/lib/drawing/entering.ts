import type { Installation } from '../acoustics/installation.js';
import type { Mount } from '../acoustics/mounts/mount.js';
import { knobsOf, withKnob } from '../acoustics/mounts/size-knobs.js';

/**
 * The installation on its way in: at 0 no larger than the speaker's rim, at 1 as it is. For the picture only;
 * what is heard is never in between.
 */
export function entering(installation: Installation, share: number): Installation {
  if (share >= 1) return installation;
  let mount: Mount = installation.mount;
  for (const { key, min, value } of knobsOf(installation)) {
    const isOffset = key === 'offsetLength' || key === 'offsetWidth';
    if (!isOffset) mount = withKnob(mount, key, min + (value - min) * share);
  }
  return { ...installation, mount };
}
