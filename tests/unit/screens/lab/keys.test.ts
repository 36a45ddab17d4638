import { afterAll, beforeAll, expect, test } from 'vitest';
import { keyDeed } from '../../../../src/lib/screens/lab/keys.js';

/** Stands in for an element of the page: it is found by the selectors given. */
class FakeElement {
  constructor(private readonly matches: string[] = []) {}
  closest(selectors: string): FakeElement | null {
    return selectors.split(', ').some((one) => this.matches.includes(one)) ? this : null;
  }
}

const before = globalThis.Element;
beforeAll(() => void (globalThis.Element = FakeElement as unknown as typeof Element));
afterAll(() => void (globalThis.Element = before));

function press(
  code: string,
  more: Partial<KeyboardEvent> & { on?: string[] } = {}
): ReturnType<typeof keyDeed> {
  const { on = [], ...rest } = more;
  return keyDeed({ code, key: '', target: new FakeElement(on), ...rest } as unknown as KeyboardEvent);
}

test('digits of the row and of the number pad hear by their place, whatever letter is on them', () => {
  for (const row of ['Digit', 'Numpad'])
    for (let numeral = 1; numeral <= 6; numeral++)
      expect(press(`${row}${numeral}`, { key: 'é' })).toEqual({ deed: 'hear', index: numeral - 1 });
  expect(press('Digit7')).toBeNull();
  expect(press('Digit0')).toBeNull();
});

test('the question mark goes by its sign, wherever it stands', () => {
  expect(press('Slash', { key: '?', shiftKey: true })).toEqual({ deed: 'help' });
  expect(press('KeyM', { key: '?', shiftKey: true })).toEqual({ deed: 'help' });
  expect(press('Slash', { key: '/' })).toBeNull();
});

test('arrows turn by one, with Shift by ten; up and right are more', () => {
  expect(press('ArrowUp')).toEqual({ deed: 'turn', by: 1 });
  expect(press('ArrowLeft')).toEqual({ deed: 'turn', by: -1 });
  expect(press('ArrowRight', { shiftKey: true })).toEqual({ deed: 'turn', by: 10 });
  expect(press('ArrowDown', { shiftKey: true })).toEqual({ deed: 'turn', by: -10 });
});

test('a key with Ctrl, Alt or Meta belongs to the browser, a handled one to who handled it', () => {
  for (const held of ['ctrlKey', 'altKey', 'metaKey', 'defaultPrevented'])
    expect(press('Digit2', { [held]: true })).toBeNull();
});

test('text fields, lists and open dialogs keep every key', () => {
  for (const place of ['input', 'textarea', 'select', 'dialog[open]', '[contenteditable]'])
    for (const code of ['Digit2', 'Space', 'KeyG', 'Period', 'ArrowUp', 'PageDown'])
      expect(press(code, { on: [place], key: code === 'Digit2' ? '?' : '' })).toBeNull();
});

test('what is chosen and not typed keeps the keys that choose, and leaves the rest', () => {
  for (const type of ['radio', 'checkbox']) {
    const on = ['input', `input[type="${type}"]`];
    for (const code of ['ArrowUp', 'PageDown', 'Space']) expect(press(code, { on })).toBeNull();
    expect(press('Digit3', { on })).toEqual({ deed: 'hear', index: 2 });
    expect(press('KeyW', { on })).toEqual({ deed: 'model' });
  }
});

test('what can be pressed keeps Space and leaves the rest', () => {
  for (const place of ['button', 'a', 'summary', '[role="slider"]', '[role="button"]']) {
    expect(press('Space', { on: [place] })).toBeNull();
    expect(press('Digit3', { on: [place] })).toEqual({ deed: 'hear', index: 2 });
  }
});

test('a region that scrolls keeps the keys that scroll', () => {
  const on = ['[role="region"][tabindex]'];
  for (const code of ['ArrowDown', 'PageDown', 'Space']) expect(press(code, { on })).toBeNull();
  expect(press('Digit3', { on })).toEqual({ deed: 'hear', index: 2 });
});

test('the remaining keys, and none besides', () => {
  expect(press('Space')).toEqual({ deed: 'play' });
  expect(press('PageUp')).toEqual({ deed: 'step', by: -1 });
  expect(press('PageDown')).toEqual({ deed: 'step', by: 1 });
  expect(press('Period')).toEqual({ deed: 'silence' });
  expect(press('NumpadDecimal')).toEqual({ deed: 'silence' });
  expect(press('KeyG')).toEqual({ deed: 'grow' });
  expect(press('KeyW')).toEqual({ deed: 'model' });
  expect(press('KeyA')).toEqual({ deed: 'air' });
  for (const code of ['Tab', 'Escape', 'Enter', 'KeyQ', 'F5']) expect(press(code)).toBeNull();
});
