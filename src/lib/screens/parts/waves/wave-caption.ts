import { soundSpeed, type Air } from '../../../acoustics/air.js';
import type { Installation } from '../../../acoustics/installation.js';
import type { Mount } from '../../../acoustics/mounts/mount.js';
import type { Hertz, Seconds } from '../../../units.js';

/** What a wave picture of a steady tone shows, in plain words: the colours by what makes them, and what the mount does. */
export function toneCaption(over: Pick<Installation, 'mount' | 'board'>, frequency: Hertz, air: Air): string {
  return `Orange: the air is pressed together; blue: it is thinned out; between them it is as ever, on the way from one to the other. ${hallCaption(over, frequency, air)}`;
}

/** The gist of it, for the back row. */
export function hallCaption(
  { mount, board }: Pick<Installation, 'mount' | 'board'>,
  frequency: Hertz,
  air: Air
): string {
  const told = mountCaption(mount, frequency, air);
  return board ? `${told} The board throws back all that comes down on it.` : told;
}

function mountCaption(mount: Mount, frequency: Hertz, air: Air): string {
  const opposite = 'The back of the cone does the opposite of its front.';
  if (mount.chassis) return `${opposite} It comes out by the slits of the chassis alone: less cancels.`;
  if (mount.kind === 'box' && mount.leak)
    return `${opposite} The box shuts it in but for the leak: on low notes that lets some of it out, which cancels.`;
  switch (mount.kind) {
    case 'free':
      return `${opposite} Nothing keeps the two apart: they cancel.`;
    case 'plate':
      return `${opposite} The plate lengthens the back’s way round: less cancels.`;
    case 'shell':
      return `${opposite} The shell lengthens the back’s way round: less cancels.`;
    case 'box': {
      const shut = 'The box shuts the back in: nothing cancels.';
      // As long as the air inside is a spring; docs/models/closed-box.md.
      const isSpring = frequency < soundSpeed(air) / (4 * Math.max(mount.length, mount.width, mount.depth));
      return isSpring
        ? `${shut} While the cone is out, the air in the box is thinned out, and the air in front is, too.`
        : shut;
    }
  }
}

/** A time in a puff: 1.20 ms. */
export function puffTime(time: Seconds): string {
  return `${(time * 1000).toFixed(2)} ms`;
}
