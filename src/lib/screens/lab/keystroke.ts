/**
 * One way of pressing: by the place of the key (`KeyboardEvent.code`) and not by the letter on it, so that it is the same on
 * every layout; by its sign, wherever that stands; or as a chord of Ctrl or Command with a letter, as everywhere. Where
 * `shift` is absent it may be held or not.
 */
export type Keystroke =
  | { place: string; shift?: boolean }
  | { sign: string }
  | { chord: string; shift: boolean };

/** A key by its place; `shift` as above. */
export function place(code: string, shift?: boolean): Keystroke {
  return { place: code, shift };
}

type Pressed = Pick<KeyboardEvent, 'code' | 'key' | 'shiftKey' | 'ctrlKey' | 'metaKey'>;

export function isPressed(stroke: Keystroke, event: Pressed): boolean {
  const chord = event.ctrlKey || event.metaKey;
  if ('chord' in stroke)
    return chord && event.key.toLowerCase() === stroke.chord && Boolean(event.shiftKey) === stroke.shift;
  if (chord) return false;
  if ('sign' in stroke) return event.key === stroke.sign;
  return (
    event.code === stroke.place && (stroke.shift === undefined || Boolean(event.shiftKey) === stroke.shift)
  );
}

const NAMES: Record<string, string> = {
  ArrowLeft: '←',
  ArrowRight: '→',
  ArrowUp: '↑',
  ArrowDown: '↓',
  PageUp: 'Page Up',
  PageDown: 'Page Down',
  Period: '.'
};

/** A keystroke as it is written for the user: G, Page Up, Ctrl Shift Z. */
export function keyWords(stroke: Keystroke): string {
  if ('sign' in stroke) return stroke.sign;
  const letter =
    'chord' in stroke
      ? stroke.chord.toUpperCase()
      : (NAMES[stroke.place] ?? stroke.place.replace(/^(?:Key|Digit)/, ''));
  return `${'chord' in stroke ? 'Ctrl ' : ''}${stroke.shift ? 'Shift ' : ''}${letter}`;
}
