import type { Command, KeyLine, Parts } from './command.js';
import { place } from './keystroke.js';
import { start } from './play.js';

/** What the keys do for a hall vote. */
export const VOTE_LINES: KeyLine[] = [
  {
    keys: 'V',
    does: 'hall vote, and back; I inverts it',
    commands: [
      { name: 'vote', keys: [place('KeyV')], deed: openVote },
      {
        name: 'leave vote',
        keys: [{ sign: 'Escape' }],
        where: 'vote',
        always: true,
        deed: ({ votes }) => votes.leave()
      }
    ]
  },
  {
    keys: 'Enter, Backspace',
    does: 'in a hall vote: on, and one step back (Page Up, Page Down, ← and → hear the letters)',
    commands: [
      { name: 'on', keys: [place('Enter'), place('NumpadEnter')], where: 'vote', deed: goOn },
      { name: 'back', keys: [place('Backspace')], where: 'vote', deed: ({ votes }) => votes.goBack() },
      {
        name: 'next letter',
        keys: [place('PageDown'), place('ArrowRight')],
        where: 'vote',
        held: true,
        deed: ({ votes }) => votes.step(1)
      },
      {
        name: 'previous letter',
        keys: [place('PageUp'), place('ArrowLeft')],
        where: 'vote',
        held: true,
        deed: ({ votes }) => votes.step(-1)
      }
    ]
  },
  {
    keys: '↑ ↓',
    does: 'in a hall vote: a hand more (+), a hand less (-); or type the number, 0 to 9 (number pad too)',
    commands: [
      {
        name: 'a hand more',
        keys: [place('ArrowUp'), { sign: '+' }],
        where: 'vote',
        held: true,
        deed: ({ votes }) => votes.count(1)
      },
      {
        name: 'a hand less',
        keys: [place('ArrowDown'), { sign: '-' }],
        where: 'vote',
        held: true,
        deed: ({ votes }) => votes.count(-1)
      },
      ...Array.from({ length: 10 }, (_, digit): Command => ({
        name: `digit ${digit}`,
        keys: [place(`Digit${digit}`), place(`Numpad${digit}`)],
        where: 'vote',
        deed: ({ votes }) => votes.type(digit)
      }))
    ]
  }
];

/** What the hall votes on is the bench that is kept: a run waits meanwhile, and is gone on with. */
function openVote({ script, votes }: Parts): void {
  script.leave();
  votes.open();
}

/** A round that begins by a key or a click may fill the screen, and sounds. */
function goOn(parts: Parts): void {
  const { votes, projection } = parts;
  const before = votes.screen;
  votes.goOn();
  if (before === 'round' || !votes.round) return;
  void projection.enter();
  start(parts);
}
