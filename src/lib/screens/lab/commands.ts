import { FIELD_MODEL, models, nextModel } from '../../evaluation/models.js';
import { LETTERS, SAYINGS } from '../../file/blind-run.js';
import { MAX_SETUPS } from '../../bench/bench.svelte.js';
import { nextShown } from '../hall/next-words.js';
import type { CommandName } from '../parts/commands-context.js';
import type { Command, KeyLine, Parts } from './command.js';
import { type Keystroke, place } from './keystroke.js';
import { play, start } from './play.js';
import { VOTE_LINES } from './vote-lines.js';

const ARROWS = ['ArrowLeft', 'ArrowDown', 'ArrowRight', 'ArrowUp'];

/** A hall sees a slip of the hand: there sizes change with Shift only. */
const ASK =
  'Here sizes are changed with Shift: Shift and an arrow turn the size in hand, Shift G grows the plate.';

const ASK_TO_KEEP = 'Here a scene is changed with Shift: Shift K keeps it as it is now.';

/** The lab's commands in the order of the list of keys. */
export const KEY_LINES: KeyLine[] = [
  {
    keys: `1 – ${MAX_SETUPS}`,
    does: 'hear that mount (number pad too)',
    commands: Array.from({ length: MAX_SETUPS }, (_, index) => ({
      name: `hear ${index + 1}` as const,
      keys: [place(`Digit${index + 1}`, false), place(`Numpad${index + 1}`, false)],
      deed: ({ bench }) => bench.hear(index)
    }))
  },
  {
    keys: 'Space',
    does: 'play, stop',
    commands: [{ name: 'play', keys: [place('Space')], blind: true, deed: play }]
  },
  {
    keys: '← → ↑ ↓',
    does: 'turn the size in hand by 1 mm; with Shift by 10 mm (projector view: with Shift only)',
    commands: [
      turning('smaller', -1),
      turning('larger', 1),
      turning('smaller', -10),
      turning('larger', 10),
      asking('ask for Shift', ARROWS)
    ]
  },
  {
    keys: 'Page Up, Page Down',
    does: 'previous, next mount, or scene of the script (a presenter’s clicker)',
    commands: [
      { name: 'previous', keys: [place('PageUp')], held: true, deed: ({ bench }) => bench.step(-1) },
      { name: 'next', keys: [place('PageDown')], held: true, deed: ({ bench }) => bench.step(1) },
      {
        name: 'previous scene',
        keys: [place('PageUp')],
        where: 'run',
        deed: ({ script }) => script.step(-1)
      },
      { name: 'next scene', keys: [place('PageDown')], where: 'run', deed: ({ script }) => script.step(1) }
    ]
  },
  {
    keys: '.',
    does: 'silence, and back',
    commands: [
      {
        name: 'silence',
        keys: [place('Period'), place('NumpadDecimal')],
        blind: true,
        deed: ({ sounding }) => sounding.silence(!sounding.silenced)
      }
    ]
  },
  {
    keys: 'G',
    does: 'grow the plate from the speaker’s rim (projector view: Shift G)',
    commands: [
      { name: 'grow', keys: [place('KeyG')], where: 'bench', deed: grow },
      { name: 'grow in the hall', keys: [place('KeyG', true)], where: 'hall', deed: grow },
      asking('ask for Shift G', ['KeyG'])
    ]
  },
  {
    keys: 'L',
    does: 'same drive or same loudness for all mounts',
    commands: [
      {
        name: 'loudness',
        keys: [place('KeyL')],
        deed: ({ bench }) => bench.setSameLoudness(!bench.file.view.sameLoudness)
      }
    ]
  },
  {
    keys: 'W',
    does: 'rule of thumb or wave solution',
    commands: [
      {
        name: 'model',
        keys: [place('KeyW')],
        deed: ({ bench }) => bench.setModel(nextModel(bench.model, bench.file.listener, bench.mounts))
      }
    ]
  },
  {
    keys: 'B',
    does: 'in the hand, or on the layout with its board below (in the script’s run: a black screen, and back)',
    commands: [
      {
        name: 'board',
        keys: [place('KeyB')],
        deed: ({ bench }) => bench.listenOn(bench.file.listener.board ? 'hand' : 'layout')
      },
      { name: 'black', keys: [place('KeyB')], where: 'run', deed: ({ script }) => script.toggleBlack() }
    ]
  },
  {
    keys: 'A',
    does: 'the waves in the air around the mount (projector view too)',
    commands: [
      { name: 'air', keys: [place('KeyA')], where: 'bench', deed: showAir },
      { name: 'air in the hall', keys: [place('KeyA')], where: 'hall', deed: nextInHall }
    ]
  },
  {
    keys: 'F',
    does: 'which one: what fits into my model, tried and ranked',
    commands: [
      { name: 'fit', keys: [place('KeyF')], where: 'bench', deed: ({ dialogs }) => (dialogs.fit = true) }
    ]
  },
  {
    keys: 'P',
    does: 'projector view, and back; I inverts it',
    commands: [
      {
        name: 'projector',
        keys: [place('KeyP')],
        letsGrow: true,
        deed: ({ script, projection }) => (script.running ? script.leave() : void projection.toggle())
      },
      {
        name: 'leave',
        keys: [{ sign: 'Escape' }],
        where: 'hall',
        always: true,
        letsGrow: true,
        deed: ({ script, projection }) => (script.running ? script.leave() : void projection.leave())
      },
      {
        name: 'invert',
        keys: [place('KeyI')],
        where: ['hall', 'vote'],
        letsGrow: true,
        deed: ({ projection }) => projection.invert()
      }
    ]
  },
  {
    keys: 'H, K',
    does: 'the hall’s script; keep this scene in it (in its run, Shift K: the present scene as it is now)',
    commands: [
      {
        name: 'script',
        keys: [place('KeyH')],
        where: 'bench',
        deed: ({ dialogs }) => (dialogs.script = true)
      },
      { name: 'keep scene', keys: [place('KeyK')], deed: keepScene },
      {
        name: 'keep scene here',
        keys: [place('KeyK', true)],
        where: 'run',
        deed: ({ script }) => script.keepHere()
      },
      asking('ask for Shift K', ['KeyK'], { where: 'run', note: ASK_TO_KEEP })
    ]
  },
  {
    keys: 'R, Home',
    does: 'run the script, or go on with it; in its run: the scene as it was kept',
    commands: [
      { name: 'run the script', keys: [place('KeyR')], deed: runScript },
      {
        name: 'scene as kept',
        keys: [place('Home'), place('KeyR')],
        where: 'run',
        deed: ({ script }) => script.back()
      }
    ]
  },
  {
    keys: 'N',
    does: 'the presenter’s window: what comes next, and the time',
    commands: [{ name: 'presenter', keys: [place('KeyN')], letsGrow: true, deed: openPresenter }]
  },
  {
    keys: 'T',
    does: 'blind trials, and back',
    commands: [
      { name: 'trials', keys: [place('KeyT')], where: 'bench', deed: ({ trials }) => trials.open() },
      {
        name: 'leave trials',
        keys: [{ sign: 'Escape' }],
        where: 'trials',
        always: true,
        deed: ({ trials }) => trials.leave()
      }
    ]
  },
  ...VOTE_LINES,
  {
    keys: 'A, B, C, D, E, F',
    does: 'in blind trials and hall votes: hear that letter, capital or small',
    commands: LETTERS.map((letter, i): Command => ({
      name: `letter ${letter}`,
      keys: [{ sign: letter }, { sign: letter.toLowerCase() }],
      where: ['trials', 'vote'],
      deed: ({ trials, votes }) => (votes.round ? votes.hear(i) : trials.hear(i))
    }))
  },
  {
    keys: '1, 2',
    does: 'in blind trials: answer (number pad too)',
    commands: [
      ...[1, 2].map((answer): Command => ({
        name: `answer ${answer}`,
        keys: [place(`Digit${answer}`), place(`Numpad${answer}`)],
        where: 'trials',
        deed: ({ trials }) => trials.run && trials.answer(SAYINGS[trials.run.question][answer - 1])
      }))
    ]
  },
  {
    keys: 'Ctrl Z, Ctrl Shift Z',
    does: 'undo, redo',
    commands: [
      { name: 'undo', keys: [chord('z')], deed: ({ bench }) => bench.undo() },
      { name: 'redo', keys: [chord('z', true), chord('y')], deed: ({ bench }) => bench.redo() }
    ]
  },
  {
    keys: 'Ctrl S, Ctrl O',
    does: 'save the bench to a file, open one',
    // The browser would save the page or open one instead, in a text field, too.
    commands: [
      { name: 'save', keys: [chord('s')], inText: true, deed: save },
      { name: 'open', keys: [chord('o')], inText: true, deed: ({ keeper }) => void keeper.files.pick() }
    ]
  },
  {
    keys: '?',
    does: 'this list',
    commands: [
      {
        name: 'keys',
        keys: [{ sign: '?' }],
        always: true,
        letsGrow: true,
        deed: ({ dialogs }) => (dialogs.keyList = true)
      }
    ]
  }
];

/** What only buttons ask for. */
const WITHOUT_KEY: Command[] = [
  { name: 'start', keys: [], deed: start },
  {
    name: 'fullscreen',
    keys: [],
    where: ['hall', 'vote'],
    deed: ({ projection }) => void projection.toggleFullscreen()
  },
  { name: 'help', keys: [], deed: ({ dialogs }) => (dialogs.help = true) },
  { name: 'speaker', keys: [], deed: ({ dialogs }) => (dialogs.speaker = true) }
];

export const COMMANDS: readonly Command[] = [
  ...KEY_LINES.flatMap(({ commands }) => commands),
  ...WITHOUT_KEY
];

/** @throws RangeError where the table has no such command. */
export function commandNamed(name: CommandName): Command {
  const command = COMMANDS.find((one) => one.name === name);
  if (!command) throw new RangeError(`a command must be one of the lab's, got ${name}`);
  return command;
}

function chord(letter: string, shift = false): Keystroke {
  return { chord: letter, shift };
}

/** What a key that changes a size does in the hall without Shift. */
function asking(
  name: `ask for Shift${string}`,
  codes: string[],
  { where = 'hall', note = ASK }: { where?: Command['where']; note?: string } = {}
): Command {
  return {
    name,
    keys: codes.map((code) => place(code, false)),
    where,
    letsGrow: true,
    deed: ({ projection }) => projection.say(note)
  };
}

/** The size in hand, or the first where none is, turned by so many steps. */
function turning(way: 'smaller' | 'larger', by: 1 | -1 | 10 | -10): Command {
  const far = Math.abs(by) === 10;
  const codes = by < 0 ? ARROWS.slice(0, 2) : ARROWS.slice(2);
  return {
    name: far ? `${way} by ten` : way,
    keys: codes.map((code) => place(code, far)),
    ...(far ? {} : { where: 'bench' as const }),
    held: true,
    deed: ({ bench }) => {
      const knob = bench.knobs.find(({ key }) => key === bench.inHand) ?? bench.knobs[0];
      if (!knob) return;
      bench.inHand = knob.key;
      bench.pushKnob(knob.key, knob.value + by * knob.step);
    }
  };
}

/** Keeps what is heard and seen as the script's last scene, and says so where one looks. */
function keepScene({ script, projection, keeper, bench }: Parts): void {
  const said =
    script.keep() ?? `Kept as scene ${script.scenes.length} of the hall’s script: ${bench.heard.setup.name}.`;
  tell({ projection, keeper }, said);
}

function openPresenter({ presenter, projection, keeper }: Parts): void {
  presenter.open();
  if (presenter.problem) tell({ projection, keeper }, presenter.problem);
}

/** Says something where one looks. */
function tell({ projection, keeper }: Pick<Parts, 'projection' | 'keeper'>, said: string): void {
  if (projection.open) projection.say(said);
  else keeper.status.said = said;
}

/** Without scenes there is nothing to run: that is where they are made. */
function runScript({ script, projection, dialogs }: Parts): void {
  if (script.scenes.length > 0) return script.begin();
  void projection.leave();
  dialogs.script = true;
}

function grow({ growth, page }: Parts): void {
  growth.start(page.still);
}

function showAir({ bench, page }: Parts): void {
  bench.setModel(FIELD_MODEL);
  page.showAir();
}

/**
 * Round and round: curves, a steady tone, one puff. In a hall the model changes by its own key alone; one that knows nothing of the
 * air has a sentence there.
 */
function nextInHall({ bench, projection, air }: Parts): void {
  const next = nextShown(projection.air, air.mode, models[bench.model].field);
  projection.air = next !== 'curves';
  if (next === 'puff') air.makePuff();
  else air.showTone();
}

/** What is typed but not entered yet belongs to what is saved. */
function save({ keeper, page }: Parts): void {
  page.leaveField();
  void keeper.files.save();
}
