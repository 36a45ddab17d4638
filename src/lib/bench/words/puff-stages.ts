import { soundSpeed, type Air } from '../../acoustics/air.js';
import type { Installation } from '../../acoustics/installation.js';
import { stringPath } from '../../acoustics/string-path.js';
import type { Metres, Seconds } from '../../units.js';

/** One puff as a story in three sentences, and when the last one begins, counted from the middle of the cone's push. */
export interface PuffStages {
  sentences: [string, string, string];
  round: Seconds;
}

/** @param length as the user wants lengths written */
export function puffStages(
  installation: Installation,
  air: Air,
  length: (metres: Metres) => string
): PuffStages {
  const { mount } = installation;
  const push = 'The cone pushes once: orange leaves its front, blue its back.';
  if (mount.kind === 'box') {
    return {
      sentences: [
        push,
        'Orange runs out and bends round the box.',
        'Nothing follows it: blue stays shut in, and swings to and fro in there.'
      ],
      round: (mount.depth + mount.width / 2) / soundSpeed(air)
    };
  }
  const string = stringPath(installation)!.length;
  const rings = mount.kind === 'shell' ? ' The air in the shell rings on.' : '';
  return {
    sentences: [
      push,
      'Orange runs out in front; blue runs round the edge.',
      `Blue follows ${length(string)} behind orange. In low notes, whose waves are longer than that, the two cancel.${rings}`
    ],
    round: string / soundSpeed(air)
  };
}

/** Which sentence is told at a time, counted from the middle of the cone's push. */
export function puffStage({ round }: PuffStages, time: Seconds): 0 | 1 | 2 {
  return time < 0 ? 0 : time < round ? 1 : 2;
}
