import { soundSpeed, type Air } from '../../../acoustics/air.js';
import type { Installation } from '../../../acoustics/installation.js';
import { stringPath } from '../../../acoustics/mounts/string-path.js';
import type { Metres, Seconds } from '../../../units.js';

/** One puff as a story: what is seen, one sentence a stage, and what it means. */
export interface PuffStages {
  stages: { sentence: string; from: Seconds }[];
  moral: string;
}

/** A wave that has come round is seen for so long before what rings behind it, and the first one at the picture's end. */
const PASSING: Seconds = 0.08e-3;
const LEAVING: Seconds = 0.15e-3;

/**
 * Times are counted from the middle of the cone's push. The last sentence of a shell is about its air, which swings on when the
 * cone is long still.
 *
 * @param top how far in front of the cone the picture ends
 * @param length as the user wants lengths written
 */
export function puffStages(
  installation: Installation,
  air: Air,
  top: Metres,
  length: (metres: Metres) => string
): PuffStages {
  const { mount } = installation;
  const c = soundSpeed(air);
  const push = { sentence: 'The cone pushes: orange in front, blue behind.', from: -Infinity };
  if (mount.kind === 'box') {
    const round = (mount.depth + mount.width / 2) / c;
    return {
      stages: [
        push,
        { sentence: 'Orange runs out and bends round the box.', from: round },
        { sentence: 'Blue stays shut in, and grows as the cone goes on.', from: 3 * round }
      ],
      moral: 'Nothing follows that could cancel orange, however low the note.'
    };
  }
  const string = stringPath(installation)!.length;
  const round = string / c;
  const follows = 0.75 * round;
  const gone = Math.max(follows, top / c + LEAVING);
  const stages = [
    push,
    { sentence: `Blue comes round the edge, ${length(string)} to the front.`, from: round / 3 }
  ];
  // Round a long way blue comes when orange has left the picture already.
  if (mount.kind === 'shell' || follows < gone)
    stages.push({ sentence: 'It follows orange, too late to cancel it.', from: follows });
  stages.push(
    mount.kind === 'shell'
      ? {
          sentence: 'No new push: the shell’s own air swings on, and booms at its pitch.',
          from: round + PASSING
        }
      : { sentence: 'Orange has left the picture, blue follows; what is left dies away.', from: gone }
  );
  return {
    stages,
    moral: 'A low note pushes for longer: there blue lies on orange and cancels it.'
  };
}

/** Which stage is seen at a time, counted from the middle of the cone's push. */
export function puffStage({ stages }: PuffStages, time: Seconds): number {
  return stages.findLastIndex(({ from }) => time >= from);
}
