import { outlineLength, outlineWidth } from '../outline.js';
import type { Installation } from '../installation.js';
import type { Metres } from '../../units.js';
import type { BodyAround, Chassis, Grille, Mount, Openings, ShellMount, SlitLeak } from './mount.js';

/** What can be added to a mount: the kinds of openings, a leak by gap or by hole. */
export type Addition = 'chassis' | 'gap' | 'hole' | 'grille' | 'body';

/** What a mount can have and has not, in the order in which it is offered. */
export function additionsOf(mount: Mount): Addition[] {
  const fits: Record<Mount['kind'], Addition[]> = {
    free: ['grille'],
    plate: ['gap', 'grille'],
    shell: ['chassis', 'gap', 'grille'],
    box: ['gap', 'hole', 'grille', 'body']
  };
  return fits[mount.kind].filter((one) => mount[kindOf(one)] === undefined);
}

/** Under which key of a mount it stands. */
export function kindOf(addition: Addition): keyof Openings {
  return addition === 'gap' || addition === 'hole' ? 'leak' : addition;
}

/** The mount with what is added to it, at usual sizes (common practice). */
export function withAddition(
  { speaker, mount }: Pick<Installation, 'speaker' | 'mount'>,
  addition: Addition
): Mount {
  switch (addition) {
    case 'chassis':
      return mount.kind === 'shell' ? { ...mount, chassis: usualChassis(mount, speaker.depth) } : mount;
    case 'gap': {
      const length = Math.round(2000 * (outlineLength(speaker.frame) + outlineWidth(speaker.frame))) / 1000;
      const leak: SlitLeak = { gap: 0.0001, length, depth: 0.002 };
      return { ...mount, leak };
    }
    case 'hole':
      return { ...mount, leak: { hole: 0.002, depth: 0.001 } };
    case 'grille':
      return { ...mount, grille: USUAL_GRILLE };
    case 'body':
      return mount.kind === 'box' ? { ...mount, body: bodyRound(mount) } : mount;
  }
}

/** The mount without one kind of openings. */
export function withoutOpening(mount: Mount, kind: keyof Openings): Mount {
  const bare = { ...mount };
  delete bare[kind];
  return bare;
}

const USUAL_GRILLE: Grille = { holes: 20, diameter: 0.0015, thickness: 0.001, cavity: 0.002 };

/** Its top a fifth of the way up, lower where the speaker needs the room. */
function usualChassis({ height, width }: ShellMount, depth: Metres): Chassis {
  const most = Math.max(0, height - depth - 0.002);
  const top = Math.floor(1000 * Math.min(height / 5, most)) / 1000;
  return { height: top, slit: Math.min(0.001, width / 8), ends: 0.002, depth: 0.002, fill: 0.3 };
}

/** The body of a coach or a tender, with openings of 3 cm² in all. */
function bodyRound({ length, width, depth }: { length: Metres; width: Metres; depth: Metres }): BodyAround {
  return {
    length: Math.max(0.12, upTo(length)),
    width: Math.max(0.033, upTo(width)),
    height: Math.max(0.035, upTo(depth)),
    openings: 0.0003
  };
}

/** A few millimetres more, in whole ones. */
function upTo(side: Metres): Metres {
  return Math.ceil(1000 * side + 4) / 1000;
}
