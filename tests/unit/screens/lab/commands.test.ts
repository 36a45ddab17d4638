import { expect, test, vi } from 'vitest';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import type { BlindRun } from '../../../../src/lib/file/blind-run.js';
import type { VoteRound } from '../../../../src/lib/file/vote-round.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import type { Scene } from '../../../../src/lib/file/scene.js';
import type { Parts } from '../../../../src/lib/screens/lab/command.js';
import { COMMANDS, commandNamed } from '../../../../src/lib/screens/lab/commands.js';
import { Dialogs } from '../../../../src/lib/screens/lab/dialogs.svelte.js';
import { Projection } from '../../../../src/lib/screens/parts/hall/projection.svelte.js';
import type { CommandName } from '../../../../src/lib/screens/parts/commands-context.js';

/** A lab whose sound, files, air and page are stood in for. */
function lab({ still = false } = {}) {
  const bench = new Bench();
  const sounding = {
    playing: false,
    silenced: false,
    play: vi.fn(async () => void (sounding.playing = true)),
    stop: vi.fn(() => void (sounding.playing = false)),
    silence: vi.fn((silenced: boolean) => void (sounding.silenced = silenced))
  };
  const air = {
    mode: 'tone' as 'tone' | 'puff',
    makePuff: vi.fn(() => void (air.mode = 'puff')),
    showTone: vi.fn(() => void (air.mode = 'tone'))
  };
  const done: string[] = [];
  const parts = {
    bench,
    sounding,
    air,
    growth: { start: vi.fn(), stop: vi.fn() },
    keeper: {
      files: {
        save: vi.fn(async () => void done.push('save')),
        pick: vi.fn(async () => void done.push('pick'))
      },
      status: { said: null as string | null }
    },
    projection: new Projection(),
    trials: {
      shown: false,
      run: null as BlindRun | null,
      open: vi.fn(),
      leave: vi.fn(),
      hear: vi.fn(),
      answer: vi.fn()
    },
    votes: {
      shown: false,
      screen: null as 'plan' | 'round' | 'rounds' | null,
      round: null as VoteRound | null,
      open: vi.fn(),
      leave: vi.fn(),
      hear: vi.fn(),
      step: vi.fn(),
      count: vi.fn(),
      type: vi.fn(),
      goOn: vi.fn(),
      goBack: vi.fn()
    },
    script: {
      running: false as boolean,
      scenes: [] as Scene[],
      keep: vi.fn((): string | null => null),
      keepHere: vi.fn(),
      begin: vi.fn(),
      step: vi.fn(),
      back: vi.fn(),
      toggleBlack: vi.fn(),
      leave: vi.fn()
    },
    presenter: { problem: null as string | null, open: vi.fn() },
    dialogs: new Dialogs(),
    page: {
      still,
      dialogOpen: false,
      leaveField: vi.fn(() => void done.push('leave the field')),
      showAir: vi.fn()
    }
  } satisfies Parts;
  return { ...parts, done, run: (name: CommandName) => commandNamed(name).deed(parts) };
}

test('each name stands once in the table', () => {
  const names = COMMANDS.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
});

test('a name that the table has not is refused in a sentence', () => {
  expect(() => commandNamed('hear 7')).toThrow(
    new RangeError("a command must be one of the lab's, got hear 7")
  );
});

test('hears the mount of each numeral that stands on the shelf', () => {
  const { bench, run } = lab();
  for (const numeral of [3, 1, 4, 2]) {
    run(`hear ${numeral}`);
    expect(bench.heard.numeral).toBe(String(numeral));
  }
  run('hear 6');
  expect(bench.heard.numeral).toBe('2');
});

test('listens on the layout and in the hand in turns, each from where one was there the last time', () => {
  const { bench, run } = lab();
  run('board');
  expect(bench.file.listener).toEqual({ angleDeg: 60, plane: 'width', distance: 0.9, board: true });
  // The rule of thumb knows nothing of the board.
  bench.setModel('rule');
  expect(bench.model).toBe('wave');
  bench.setListener({ angleDeg: 45 });
  run('board');
  expect([bench.file.listener, bench.model]).toEqual([{ angleDeg: 0, plane: 'width' }, 'rule']);
  bench.setListener({ angleDeg: 30, distance: 0.5 });
  run('board');
  expect(bench.file.listener).toMatchObject({ angleDeg: 45, board: true });
  bench.undo();
  expect(bench.file.listener).toEqual({ angleDeg: 30, plane: 'width', distance: 0.5 });
  // Another bench has not been listened to anywhere.
  run('board');
  bench.open(demoBench());
  run('board');
  expect(bench.file.listener.angleDeg).toBe(60);
});

test('steps on and back, round the ends', () => {
  const { bench, run } = lab();
  run('previous');
  expect(bench.heard.index).toBe(3);
  run('next');
  run('next');
  expect(bench.heard.index).toBe(1);
});

test('asks for headphones before the first sound; then plays and stops in turns', () => {
  const { sounding, dialogs, run } = lab();
  run('play');
  expect([dialogs.earCheck, sounding.play.mock.calls.length]).toEqual([true, 0]);
  dialogs.earsChecked = true;
  run('play');
  expect(sounding.playing).toBe(true);
  run('play');
  expect(sounding.playing).toBe(false);
});

test('starts what does not play and leaves alone what plays', () => {
  const { sounding, dialogs, run } = lab();
  dialogs.earsChecked = true;
  run('start');
  run('start');
  expect(sounding.playing).toBe(true);
  expect(sounding.play).toHaveBeenCalledTimes(1);
  expect(sounding.stop).not.toHaveBeenCalled();
});

test('turns the size in hand by a millimetre or ten, and takes the first in hand where none is', () => {
  const { bench, run } = lab();
  bench.hear(1);
  const sizes = (): number[] => bench.knobs.map(({ value }) => Math.round(value * 1000));
  const [first, second] = bench.knobs;
  const [length, width] = sizes();
  run('larger');
  expect(bench.inHand).toBe(first.key);
  run('larger by ten');
  expect(sizes().slice(0, 2)).toEqual([length + 11, width]);
  bench.inHand = second.key;
  run('smaller');
  run('smaller by ten');
  expect(sizes().slice(0, 2)).toEqual([length + 11, width - 11]);
  for (let i = 0; i < 40; i++) run('larger by ten');
  expect(bench.knobs[1].value).toBe(second.max);
});

test('turns nothing where nothing can be turned', () => {
  const { bench, run } = lab();
  const before = bench.file;
  for (const name of ['smaller', 'larger', 'smaller by ten', 'larger by ten'] as const) run(name);
  expect([bench.knobs.length, bench.inHand, bench.file === before]).toEqual([0, null, true]);
});

test('silences, and sounds again', () => {
  const { sounding, run } = lab();
  run('silence');
  expect(sounding.silenced).toBe(true);
  run('silence');
  expect(sounding.silenced).toBe(false);
});

test('says in the hall that a change of the bench asks for Shift, and changes nothing', () => {
  const { bench, projection, growth, run } = lab();
  bench.hear(1);
  const before = bench.file;
  for (const name of ['ask for Shift', 'ask for Shift G'] as const) {
    projection.say(null);
    run(name);
    expect(projection.note).toContain('Shift');
  }
  expect([bench.file === before, growth.start.mock.calls.length]).toEqual([true, 0]);
  projection.say(null);
});

test('grows the plate, in steps where no motion is wanted', () => {
  for (const still of [false, true]) {
    const { growth, run } = lab({ still });
    run('grow');
    expect(growth.start.mock.calls).toEqual([[still]]);
  }
});

test('switches loudness and model to and fro', () => {
  const { bench, run } = lab();
  const { sameLoudness, model } = bench.file.view;
  run('loudness');
  run('model');
  expect([bench.file.view.sameLoudness, bench.file.view.model]).toEqual([
    !sameLoudness,
    model === 'wave' ? 'rule' : 'wave'
  ]);
  run('loudness');
  run('model');
  expect([bench.file.view.sameLoudness, bench.file.view.model]).toEqual([sameLoudness, model]);
});

test('undoes and redoes', () => {
  const { bench, run } = lab();
  const before = bench.file.view.inches;
  bench.setInches(!before);
  run('undo');
  expect(bench.file.view.inches).toBe(before);
  run('redo');
  expect(bench.file.view.inches).toBe(!before);
});

test('on the bench shows the air by the wave solution, further down', () => {
  const { bench, page, projection, run } = lab();
  bench.setModel('rule');
  run('air');
  expect([bench.file.view.model, page.showAir.mock.calls.length, projection.air]).toEqual(['wave', 1, false]);
});

test('in the hall goes round: curves, a tone, a puff, curves', () => {
  const { bench, page, projection, air, run } = lab();
  bench.setModel('wave');
  const seen: (string | false)[] = [];
  for (let i = 0; i < 4; i++) {
    run('air in the hall');
    seen.push(projection.air && air.mode);
  }
  expect(seen).toEqual(['tone', 'puff', false, 'tone']);
  expect([bench.file.view.model, page.showAir.mock.calls.length]).toEqual(['wave', 0]);
});

test('in the hall never changes the model by itself: the rule of thumb has no puff to go to', () => {
  const { bench, projection, air, run } = lab();
  bench.setModel('rule');
  const seen: (string | false)[] = [];
  for (let i = 0; i < 3; i++) {
    run('air in the hall');
    seen.push(projection.air && air.mode);
  }
  expect(seen).toEqual(['tone', false, 'tone']);
  expect(bench.file.view.model).toBe('rule');
});

test('enters the hall and leaves it again; inverts it there alone', () => {
  const { projection, run } = lab();
  run('invert');
  expect(projection.inverted).toBe(false);
  run('projector');
  run('invert');
  expect([projection.open, projection.inverted]).toEqual([true, true]);
  run('projector');
  expect(projection.open).toBe(false);
  run('projector');
  run('leave');
  expect(projection.open).toBe(false);
});

test('asks for fullscreen, and what is not to be had is said', async () => {
  const { projection, run } = lab();
  run('projector');
  run('fullscreen');
  await vi.waitFor(() => expect(projection.note).toContain('No fullscreen here'));
});

test('what is typed counts before it is saved; opening leaves the field alone', () => {
  const { done, run } = lab();
  run('save');
  expect(done).toEqual(['leave the field', 'save']);
  run('open');
  expect(done.slice(2)).toEqual(['pick']);
});

test('opens the list of keys and the explanation', () => {
  const { dialogs, run } = lab();
  run('keys');
  expect([dialogs.keyList, dialogs.help, dialogs.earCheck]).toEqual([true, false, false]);
  run('help');
  expect(dialogs.help).toBe(true);
});

test('blind trials open, hear their letters, and are answered by the question that is asked', () => {
  const { trials, run } = lab();
  run('trials');
  run('leave trials');
  expect([trials.open, trials.leave].map((deed) => deed.mock.calls.length)).toEqual([1, 1]);
  ['A', 'B', 'C'].forEach((letter) => run(`letter ${letter}`));
  expect(trials.hear.mock.calls).toEqual([[0], [1], [2]]);
  run('answer 1');
  expect(trials.answer).not.toHaveBeenCalled();
  trials.run = { question: 'like' } as BlindRun;
  run('answer 1');
  run('answer 2');
  expect(trials.answer.mock.calls).toEqual([['B'], ['C']]);
});

test('a hall vote hears its letters, counts, and goes on and back', () => {
  const { votes, trials, run } = lab();
  run('vote');
  run('leave vote');
  expect([votes.open, votes.leave].map((deed) => deed.mock.calls.length)).toEqual([1, 1]);
  votes.round = {} as VoteRound;
  for (const letter of 'ADF') run(`letter ${letter}`);
  run('next letter');
  run('previous letter');
  run('a hand more');
  run('a hand less');
  run('digit 7');
  run('back');
  expect([votes.hear, votes.step, votes.count, votes.type].map((deed) => deed.mock.calls.flat())).toEqual([
    [0, 3, 5],
    [1, -1],
    [1, -1],
    [7]
  ]);
  expect([trials.hear.mock.calls.length, votes.goBack.mock.calls.length]).toEqual([0, 1]);
});

test('a vote that begins takes the view and sounds; one that goes on leaves the sound as it is', () => {
  const { votes, projection, sounding, dialogs, run } = lab();
  dialogs.earsChecked = true;
  votes.screen = 'plan';
  run('on');
  expect([projection.open, sounding.playing]).toEqual([false, false]);
  votes.goOn.mockImplementation(() => {
    votes.screen = 'round';
    votes.round = {} as VoteRound;
  });
  run('on');
  expect([projection.open, sounding.playing]).toEqual([true, true]);
  sounding.playing = false;
  run('on');
  expect(sounding.playing).toBe(false);
});

test('keeps a scene and says so where one looks; what cannot be kept is said, too', () => {
  const { script, projection, keeper, run } = lab();
  script.scenes = [{ name: 'a', minutes: 1, shows: 'text', text: 'a', notes: '' }];
  run('keep scene');
  expect(keeper.status.said).toBe('Kept as scene 1 of the hall’s script: Free air.');
  projection.open = true;
  script.keep.mockReturnValue('no room');
  run('keep scene');
  expect([projection.note, keeper.status.said]).toEqual([
    'no room',
    'Kept as scene 1 of the hall’s script: Free air.'
  ]);
  projection.say(null);
});

test('runs the script, or shows where its scenes are made', () => {
  const { script, dialogs, run } = lab();
  run('run the script');
  expect([script.begin.mock.calls.length, dialogs.script]).toEqual([0, true]);
  script.scenes = [{ name: 'a', minutes: 1, shows: 'text', text: 'a', notes: '' }];
  run('run the script');
  expect(script.begin).toHaveBeenCalledTimes(1);
  dialogs.script = false;
  run('script');
  expect(dialogs.script).toBe(true);
});

test('in a run steps both ways, goes black, comes back from a slip, and leaves by whatever leaves the hall', () => {
  const { script, projection, run } = lab();
  script.running = projection.open = true;
  run('next scene');
  run('previous scene');
  expect(script.step.mock.calls).toEqual([[1], [-1]]);
  run('black');
  run('scene as kept');
  run('keep scene here');
  run('ask for Shift K');
  expect(projection.note).toContain('Shift K');
  run('leave');
  run('projector');
  expect(
    [script.toggleBlack, script.back, script.keepHere, script.leave].map((deed) => deed.mock.calls.length)
  ).toEqual([1, 1, 1, 2]);
  projection.say(null);
});

test('opens the presenter’s window, and says where one looks that the browser does not', () => {
  const { presenter, projection, keeper, run } = lab();
  run('presenter');
  expect([presenter.open.mock.calls.length, keeper.status.said]).toEqual([1, null]);
  presenter.problem = 'not opened';
  run('presenter');
  projection.open = true;
  run('presenter');
  expect([keeper.status.said, projection.note]).toEqual(['not opened', 'not opened']);
  projection.say(null);
});

test('a vote lets a run wait: it is about the bench that is kept', () => {
  const { script, votes, run } = lab();
  run('vote');
  expect(script.leave.mock.invocationCallOrder[0]).toBeLessThan(votes.open.mock.invocationCallOrder[0]);
});
