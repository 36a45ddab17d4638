import { afterAll, beforeAll, expect, test } from 'vitest';
import { COMMANDS, KEY_LINES } from '../../../../src/lib/screens/lab/commands.js';
import { commandFor, type Situation } from '../../../../src/lib/screens/lab/keys.js';
import { keyWords, type Keystroke } from '../../../../src/lib/screens/lab/keystroke.js';
import { FakeElement, keyPress } from './fake-element.js';

const before = globalThis.Element;
beforeAll(() => void (globalThis.Element = FakeElement as unknown as typeof Element));
afterAll(() => void (globalThis.Element = before));

const BENCH: Situation = {
  hall: false,
  run: false,
  trials: false,
  vote: false,
  dialog: false,
  singleKeys: true
};
const HALL: Situation = { ...BENCH, hall: true };
const RUN: Situation = { ...HALL, run: true };
const TRIALS: Situation = { ...BENCH, trials: true };
const VOTE: Situation = { ...BENCH, hall: true, vote: true };

function press(code: string, more: Parameters<typeof keyPress>[1] = {}, situation = BENCH): string | null {
  return commandFor(keyPress(code, more), situation)?.name ?? null;
}

/** The event of a keystroke of the table. */
function strike(stroke: Keystroke): [string, Partial<KeyboardEvent>] {
  if ('chord' in stroke)
    return [`Key${stroke.chord.toUpperCase()}`, { key: stroke.chord, ctrlKey: true, shiftKey: stroke.shift }];
  if ('sign' in stroke) return ['', { key: stroke.sign }];
  return [stroke.place, { shiftKey: stroke.shift ?? false }];
}

test('digits of the row and of the number pad hear by their place, whatever letter is on them', () => {
  for (const row of ['Digit', 'Numpad'])
    for (let numeral = 1; numeral <= 6; numeral++) {
      expect(press(`${row}${numeral}`, { key: 'é' })).toBe(`hear ${numeral}`);
      expect(press(`${row}${numeral}`, { shiftKey: true })).toBeNull();
    }
  expect(press('Digit7')).toBeNull();
  expect(press('Digit0')).toBeNull();
});

test('the question mark goes by its sign, wherever it stands', () => {
  expect(press('Slash', { key: '?', shiftKey: true })).toBe('keys');
  expect(press('KeyM', { key: '?', shiftKey: true })).toBe('keys');
  expect(press('KeyG', { key: '?', shiftKey: true }), 'on the key of another command').toBe('keys');
  expect(press('Slash', { key: '/' })).toBeNull();
});

test('arrows turn by one, with Shift by ten; up and right are more', () => {
  expect(press('ArrowUp')).toBe('larger');
  expect(press('ArrowRight')).toBe('larger');
  expect(press('ArrowLeft')).toBe('smaller');
  expect(press('ArrowDown')).toBe('smaller');
  expect(press('ArrowRight', { shiftKey: true })).toBe('larger by ten');
  expect(press('ArrowDown', { shiftKey: true })).toBe('smaller by ten');
});

test('in the hall nothing changes the bench without Shift: the plain key only asks for it', () => {
  for (const code of ['ArrowUp', 'ArrowRight', 'ArrowLeft', 'ArrowDown', 'KeyG'])
    expect(press(code, {}, HALL), code).toMatch(/^ask for Shift/);
  expect(press('ArrowRight', { shiftKey: true }, HALL)).toBe('larger by ten');
  expect(press('ArrowDown', { shiftKey: true }, HALL)).toBe('smaller by ten');
  expect(press('KeyG', { shiftKey: true }, HALL)).toBe('grow in the hall');
});

test('a key with Ctrl, Alt or Meta belongs to the browser, a handled one to who handled it', () => {
  for (const held of ['ctrlKey', 'altKey', 'metaKey', 'defaultPrevented'])
    for (const code of ['Digit2', 'KeyG', 'KeyW', 'Space', 'PageDown'])
      expect(press(code, { [held]: true })).toBeNull();
});

test('undo, redo, save and open go by the letter with Ctrl or Command, and by nothing less or more', () => {
  for (const held of ['ctrlKey', 'metaKey'] as const) {
    expect(press('KeyY', { key: 'z', [held]: true })).toBe('undo');
    expect(press('KeyY', { key: 'Z', [held]: true, shiftKey: true })).toBe('redo');
    expect(press('KeyZ', { key: 'y', [held]: true })).toBe('redo');
    expect(press('KeyS', { key: 's', [held]: true })).toBe('save');
    expect(press('KeyO', { key: 'O', [held]: true })).toBe('open');
    for (const key of ['y', 's', 'o'])
      expect(press('', { key, [held]: true, shiftKey: true }), `Shift ${key}`).toBeNull();
    for (const key of ['z', 'y', 's', 'o'])
      expect(press('', { key, [held]: true, altKey: true }), `Alt ${key}`).toBeNull();
  }
  for (const key of ['z', 'y', 's', 'o']) expect(press(`Key${key.toUpperCase()}`, { key })).toBeNull();
});

test('text fields, lists and open dialogs keep every key', () => {
  for (const place of ['input', 'textarea', 'select', 'dialog[open]', '[contenteditable]']) {
    for (const code of ['Digit2', 'Space', 'KeyG', 'Period', 'ArrowUp', 'PageDown'])
      expect(press(code, { on: [place], key: code === 'Digit2' ? '?' : '' })).toBeNull();
    for (const key of ['z', 'y']) expect(press('', { on: [place], key, ctrlKey: true })).toBeNull();
  }
});

test('only saving and opening work in a text field, too', () => {
  for (const { name, keys } of COMMANDS)
    for (const key of keys) {
      const [code, more] = strike(key);
      for (const situation of [BENCH, HALL])
        expect(press(code, { ...more, on: ['input'] }, situation)).toBe(
          name === 'save' || name === 'open' ? name : null
        );
    }
});

test('what is chosen and not typed keeps the keys that choose, and leaves the rest', () => {
  for (const type of ['radio', 'checkbox']) {
    const on = ['input', `input[type="${type}"]`];
    for (const code of ['ArrowUp', 'PageDown', 'Space']) expect(press(code, { on })).toBeNull();
    expect(press('Digit3', { on })).toBe('hear 3');
    expect(press('KeyW', { on })).toBe('model');
    expect(press('', { on, key: 'z', ctrlKey: true })).toBe('undo');
  }
});

test('what can be pressed keeps Space and leaves the rest', () => {
  for (const place of ['button', 'a', 'summary', '[role="slider"]', '[role="button"]']) {
    expect(press('Space', { on: [place] })).toBeNull();
    expect(press('Digit3', { on: [place] })).toBe('hear 3');
  }
});

test('a region that scrolls keeps the keys that scroll', () => {
  const on = ['[role="region"][tabindex]'];
  for (const code of ['ArrowDown', 'PageDown', 'Space']) expect(press(code, { on })).toBeNull();
  expect(press('Digit3', { on })).toBe('hear 3');
});

test('a presenter’s clicker steps on the bench and in the hall', () => {
  for (const situation of [BENCH, HALL]) {
    expect(press('PageUp', {}, situation)).toBe('previous');
    expect(press('PageDown', {}, situation)).toBe('next');
  }
});

test('a run has the clicker, B, K, R and Home for itself, and all else of the hall', () => {
  const own = {
    PageUp: 'previous scene',
    PageDown: 'next scene',
    KeyB: 'black',
    KeyR: 'scene as kept',
    Home: 'scene as kept'
  };
  for (const [code, name] of Object.entries(own)) expect(press(code, {}, RUN)).toBe(name);
  expect(press('KeyK', {}, RUN)).toBe('ask for Shift K');
  expect(press('KeyK', { shiftKey: true }, RUN)).toBe('keep scene here');
  for (const code of [
    'Digit3',
    'Space',
    'Period',
    'KeyL',
    'KeyW',
    'KeyA',
    'KeyI',
    'KeyP',
    'KeyN',
    'KeyG',
    'ArrowUp'
  ])
    expect(press(code, {}, RUN), code).toBe(press(code, {}, HALL));
  expect(press('Escape', { key: 'Escape' }, RUN)).toBe('leave');
  expect([press('KeyB', {}, HALL), press('KeyR', {}, HALL), press('KeyK', {}, HALL)]).toEqual([
    'board',
    'run the script',
    'keep scene'
  ]);
  for (const code of ['KeyH', 'KeyT', 'KeyF']) expect(press(code, {}, RUN)).toBeNull();
});

test('an element of another window keeps its keys, too', () => {
  const closest = (selector: string) => (selector.startsWith('button') ? {} : null);
  const target = { closest } as unknown as EventTarget;
  expect(commandFor({ ...keyPress('Space'), target } as KeyboardEvent, RUN)).toBeNull();
  expect(commandFor({ ...keyPress('PageDown'), target } as KeyboardEvent, RUN)?.name).toBe('next scene');
});

test('A shows the air further down on the bench, and in place of the curves in the hall', () => {
  expect(press('KeyA')).toBe('air');
  expect(press('KeyA', {}, HALL)).toBe('air in the hall');
});

test('I and Escape belong to the hall', () => {
  expect(press('KeyI')).toBeNull();
  expect(press('Escape', { key: 'Escape' })).toBeNull();
  expect(press('KeyI', {}, HALL)).toBe('invert');
  expect(press('CapsLock', { key: 'Escape' }, HALL), 'by its sign').toBe('leave');
});

test('Escape closes an open dialog before it leaves the hall, wherever the focus is', () => {
  expect(press('Escape', { key: 'Escape' }, { ...HALL, dialog: true })).toBeNull();
  expect(press('KeyI', {}, { ...HALL, dialog: true }), 'no other key minds').toBe('invert');
});

test('with single keys switched off only chords, the list that switches them on, and Escape are left', () => {
  const left = COMMANDS.filter(({ name, keys }) =>
    keys.some((key) => {
      const [code, more] = strike(key);
      return [BENCH, HALL, TRIALS].some(
        (situation) => press(code, more, { ...situation, singleKeys: false }) === name
      );
    })
  ).map(({ name }) => name);
  expect(left).toEqual(['leave', 'leave trials', 'undo', 'redo', 'save', 'open', 'keys']);
});

test('the remaining keys, and none besides', () => {
  expect(press('Space')).toBe('play');
  expect(press('Period')).toBe('silence');
  expect(press('NumpadDecimal')).toBe('silence');
  expect(press('KeyG')).toBe('grow');
  expect(press('KeyL')).toBe('loudness');
  expect(press('KeyW')).toBe('model');
  expect(press('KeyP')).toBe('projector');
  expect(press('KeyT')).toBe('trials');
  expect(press('KeyV')).toBe('vote');
  for (const code of ['Tab', 'Enter', 'F5', 'Home', 'End', 'Comma', 'Numpad0', 'Slash'])
    expect(press(code)).toBeNull();
  const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'.split('');
  expect(letters.filter((letter) => press(`Key${letter}`, { key: letter.toLowerCase() }))).toEqual([
    'A',
    'B',
    'F',
    'G',
    'H',
    'K',
    'L',
    'N',
    'P',
    'R',
    'T',
    'V',
    'W'
  ]);
});

test('every key of the table asks for the command it stands at, here, in the hall, in blind trials or in a hall vote', () => {
  for (const { name, keys, where } of COMMANDS)
    for (const key of keys) {
      const [code, more] = strike(key);
      const places = where ? [where].flat() : ['bench', 'hall'];
      if (places.includes('bench')) expect(press(code, more)).toBe(name);
      if (places.includes('hall')) expect(press(code, more, HALL)).toBe(name);
      if (places.includes('run')) expect(press(code, more, RUN)).toBe(name);
      // Blind trials and votes leave nothing that changes what is compared, or tells of it.
      for (const [place, situation] of [
        ['trials', TRIALS],
        ['vote', VOTE]
      ] as const) {
        const left = places.includes(place) || ['play', 'silence'].includes(name);
        if (left) expect(press(code, more, situation)).toBe(name);
        else expect(press(code, more, situation)).not.toBe(name);
      }
    }
});

test('the list of keys says what it has always said', () => {
  expect(KEY_LINES.map(({ keys, does }) => [keys, does])).toEqual([
    ['1 – 6', 'hear that mount (number pad too)'],
    ['Space', 'play, stop'],
    ['← → ↑ ↓', 'turn the size in hand by 1 mm; with Shift by 10 mm (projector view: with Shift only)'],
    ['Page Up, Page Down', 'previous, next mount, or scene of the script (a presenter’s clicker)'],
    ['.', 'silence, and back'],
    ['G', 'grow the plate from the speaker’s rim (projector view: Shift G)'],
    ['L', 'same drive or same loudness for all mounts'],
    ['W', 'rule of thumb or wave solution'],
    [
      'B',
      'in the hand, or on the layout with its board below (in the script’s run: a black screen, and back)'
    ],
    ['A', 'the waves in the air around the mount (projector view too)'],
    ['F', 'which one: what fits into my model, tried and ranked'],
    ['P', 'projector view, and back; I inverts it'],
    [
      'H, K',
      'the hall’s script; keep this scene in it (in its run, Shift K: the present scene as it is now)'
    ],
    ['R, Home', 'run the script, or go on with it; in its run: the scene as it was kept'],
    ['N', 'the presenter’s window: what comes next, and the time'],
    ['T', 'blind trials, and back'],
    ['V', 'hall vote, and back; I inverts it'],
    [
      'Enter, Backspace',
      'in a hall vote: on, and one step back (Page Up, Page Down, ← and → hear the letters)'
    ],
    ['↑ ↓', 'in a hall vote: a hand more (+), a hand less (-); or type the number, 0 to 9 (number pad too)'],
    ['A, B, C, D, E, F', 'in blind trials and hall votes: hear that letter, capital or small'],
    ['1, 2', 'in blind trials: answer (number pad too)'],
    ['Ctrl Z, Ctrl Shift Z', 'undo, redo'],
    ['Ctrl S, Ctrl O', 'save the bench to a file, open one'],
    ['?', 'this list']
  ]);
});

/** The single keys that a line of the list names. */
function told(keys: string): string[] {
  const [first, last] = keys.split(' – ').map(Number);
  if (last) return Array.from({ length: last - first + 1 }, (_, i) => String(first + i));
  return /^[←→↑↓ ]+$/.test(keys) ? keys.split(' ') : keys.split(', ');
}

/** Keys that work without a name in the first column: what the words beside it say of them, or why nothing need be said. */
const BESIDE: Record<string, string> = {
  Numpad1: 'number pad too',
  Numpad2: 'number pad too',
  Numpad3: 'number pad too',
  Numpad4: 'number pad too',
  Numpad5: 'number pad too',
  Numpad6: 'number pad too',
  'Shift ←': 'with Shift',
  'Shift →': 'with Shift',
  'Shift ↑': 'with Shift',
  'Shift ↓': 'with Shift',
  'Shift K': 'in its run, Shift K',
  'Shift G': 'projector view: Shift G',
  I: 'I inverts it',
  Escape: 'and back',
  ...Object.fromEntries([...'abcdef'].map((letter) => [letter, 'capital or small'])),
  ...Object.fromEntries([...'0789'].map((digit) => [`Numpad${digit}`, 'number pad too'])),
  ...Object.fromEntries([...'0123456789'].map((digit) => [digit, '0 to 9'])),
  NumpadEnter: 'on',
  'Page Up': 'Page Up',
  'Page Down': 'Page Down',
  '←': '←',
  '→': '→',
  '+': '(+)',
  '-': '(-)',
  // The number pad's own full stop, and the other way of redoing that there is everywhere.
  NumpadDecimal: 'silence',
  'Ctrl Y': 'redo'
};

test('every key in the list works, and every key that works is in the list', () => {
  for (const { keys, does, commands } of KEY_LINES) {
    const works = commands.flatMap((command) => command.keys.map(keyWords));
    for (const key of told(keys)) expect(works, `${keys}: ${does}`).toContain(key);
    for (const key of works)
      if (!told(keys).includes(key)) expect(does, key).toContain(BESIDE[key] ?? 'a word of this key');
  }
  const listed = KEY_LINES.flatMap(({ commands }) => commands);
  for (const command of COMMANDS)
    if (command.keys.length > 0) expect(listed, command.name).toContain(command);
});
