import { soundSpeed, type Air } from '../../../acoustics/air.js';
import type { Board } from '../../../acoustics/mounts/board.js';
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

/** One stage. */
type Stage = PuffStages['stages'][number];

/**
 * Times are counted from the middle of the cone's push. The last sentence of a shell is about its air, which swings on when the
 * cone is long still; over a board so does the air between the board and a plate.
 *
 * @param top how far above the cone the picture ends
 * @param length as the user wants lengths written
 */
export function puffStages(
  installation: Installation,
  air: Air,
  top: Metres,
  length: (metres: Metres) => string
): PuffStages {
  const { mount, board } = installation;
  const c = soundSpeed(air);
  const push = { sentence: pushWords(board), from: -Infinity };
  if (mount.chassis) return slitStages(push, stringPath(installation)!.length / c);
  if (mount.kind === 'box' && mount.leak) return leakStages(push, (mount.depth + mount.width / 2) / c);
  if (mount.kind === 'box') return boxStages(push, (mount.depth + mount.width / 2) / c, board);
  // What goes up first, and what comes round to it.
  const [first, second] = board?.facing === 'down' ? ['blue', 'orange'] : ['orange', 'blue'];
  const string = stringPath(installation)!.length;
  const round = string / c;
  const follows = 0.75 * round;
  const gone = Math.max(follows, top / c + LEAVING);
  const swings = swingingAir(installation);
  const stages = [push, { sentence: roundWords(board, length(string)), from: round / 3 }];
  // Round a long way the second comes when the first has left the picture already.
  if (swings || follows < gone)
    stages.push({ sentence: `It follows ${first}, too late to cancel it.`, from: follows });
  if (swings) stages.push({ sentence: `No new push: ${swings}.`, from: round + PASSING });
  else {
    const left = board
      ? 'What is left dies away.'
      : 'Orange has left the picture, blue follows; what is left dies away.';
    stages.push({ sentence: left, from: gone });
  }
  return {
    stages,
    moral: `A low note pushes for longer: there ${second} lies on ${first} and cancels it.`
  };
}

function pushWords(board: Board | undefined): string {
  if (!board) return 'The cone pushes: orange in front, blue behind.';
  return board.facing === 'up'
    ? 'The cone pushes: orange above it, blue below.'
    : 'The cone pushes: orange below it, blue above.';
}

function roundWords(board: Board | undefined, string: string): string {
  if (!board) return `Blue comes round the edge, ${string} to the front.`;
  return board.facing === 'up'
    ? `Blue cannot pass the board: it comes round the edge, ${string} to the front.`
    : `Orange cannot pass the board: it comes round the edge, ${string} to the back.`;
}

/** The air that rings behind a puff. */
function swingingAir({ mount, board }: Installation): string | null {
  if (mount.kind === 'shell') return 'the shell’s own air swings on, and booms at its pitch';
  return mount.kind === 'plate' && board ? 'the air between plate and board swings on' : null;
}

/** Of a shell with a chassis. @param round how long a wave takes round its wall */
function slitStages(push: Stage, round: Seconds): PuffStages {
  return {
    stages: [push, { sentence: 'Blue comes out by the slits of the chassis alone.', from: round / 3 }],
    moral: 'The narrower the slits, the less of the back gets out.'
  };
}

/** Of a box that leaks. @param round how long a wave takes round the box */
function leakStages(push: Stage, round: Seconds): PuffStages {
  return {
    stages: [
      push,
      { sentence: 'Orange runs out and bends round the box.', from: round },
      { sentence: 'Blue is shut in but for the leak.', from: 3 * round }
    ],
    moral: 'A low note pushes for longer: then the leak lets enough of the back out to cancel.'
  };
}

/** @param round how long a wave takes round the box */
function boxStages(push: Stage, round: Seconds, board: Board | undefined): PuffStages {
  const stages = [push, { sentence: 'Orange runs out and bends round the box.', from: round }];
  if (board)
    stages.push({ sentence: 'The board throws it back, as orange: the two add up.', from: 2 * round });
  stages.push({ sentence: 'Blue stays shut in, and grows as the cone goes on.', from: 3 * round });
  return { stages, moral: 'Nothing follows that could cancel orange, however low the note.' };
}

/** Which stage is seen at a time, counted from the middle of the cone's push. */
export function puffStage({ stages }: PuffStages, time: Seconds): number {
  return stages.findLastIndex(({ from }) => time >= from);
}
