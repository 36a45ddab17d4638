/** What a key does, in the order of the list of keys. */
export type KeyDeed =
  | { deed: 'hear'; index: number }
  | { deed: 'step'; by: 1 | -1 }
  | { deed: 'turn'; by: 1 | -1 | 10 | -10 }
  | {
      deed:
        | 'play'
        | 'silence'
        | 'grow'
        | 'loudness'
        | 'model'
        | 'air'
        | 'projector'
        | 'invert'
        | 'undo'
        | 'redo'
        | 'save'
        | 'open'
        | 'help';
    };

/** The keys as they are listed for the user. */
export const KEY_LIST: { keys: string; does: string }[] = [
  { keys: '1 – 6', does: 'hear that mount (number pad too)' },
  { keys: 'Space', does: 'play, stop' },
  { keys: '← → ↑ ↓', does: 'turn the size in hand by 1 mm; with Shift by 10 mm' },
  { keys: 'Page Up, Page Down', does: 'previous, next mount (a presenter’s clicker)' },
  { keys: '.', does: 'silence, and back' },
  { keys: 'G', does: 'grow the plate from the speaker’s rim' },
  { keys: 'L', does: 'same drive or same loudness for all mounts' },
  { keys: 'W', does: 'rule of thumb or wave solution' },
  { keys: 'A', does: 'the waves in the air around the mount (projector view too)' },
  { keys: 'P', does: 'projector view, and back; I inverts it' },
  { keys: 'Ctrl Z, Ctrl Shift Z', does: 'undo, redo' },
  { keys: 'Ctrl S, Ctrl O', does: 'save the bench to a file, open one' },
  { keys: '?', does: 'this list' }
];

const SCROLLING = /^(?:Arrow|Page|Space)/;

/** Elements that need the key for themselves: text fields, and for Space and Enter also what they press. */
function keepsKey(target: EventTarget | null, code: string): boolean {
  if (!(target instanceof Element)) return false;
  if (target.closest('dialog[open]')) return true;
  // What is chosen and not typed needs only the keys that choose.
  const chosen = target.closest('input[type="radio"], input[type="checkbox"]');
  if (chosen) return SCROLLING.test(code);
  if (target.closest('input, textarea, select, [contenteditable]')) return true;
  // A region that can be focused is one that scrolls, by the same keys.
  if (SCROLLING.test(code) && target.closest('[role="region"][tabindex]')) return true;
  const pressed = code === 'Space' || code === 'Enter';
  return pressed && target.closest('button, a, summary, [role="slider"], [role="button"]') !== null;
}

const ARROWS: Record<string, 1 | -1> = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1 };

/**
 * What a key press asks for, by the place of the key and not by the letter on it, so that it is the same on
 * every layout; only the question mark is asked for by its sign. Null where the key belongs to something else.
 */
export function keyDeed(event: KeyboardEvent): KeyDeed | null {
  if (event.defaultPrevented || event.altKey) return null;
  const filed = fileChord(event);
  if (filed) return filed;
  if (keepsKey(event.target, event.code)) return null;
  if (event.ctrlKey || event.metaKey) return chordDeed(event);
  if (event.key === '?') return { deed: 'help' };
  const digit = /^(?:Digit|Numpad)([1-6])$/.exec(event.code);
  if (digit && !event.shiftKey) return { deed: 'hear', index: Number(digit[1]) - 1 };
  const arrow = ARROWS[event.code];
  if (arrow) return { deed: 'turn', by: event.shiftKey ? (arrow === 1 ? 10 : -10) : arrow };
  switch (event.code) {
    case 'Space':
      return { deed: 'play' };
    case 'PageUp':
      return { deed: 'step', by: -1 };
    case 'PageDown':
      return { deed: 'step', by: 1 };
    case 'Period':
    case 'NumpadDecimal':
      return { deed: 'silence' };
    case 'KeyG':
      return { deed: 'grow' };
    case 'KeyL':
      return { deed: 'loudness' };
    case 'KeyA':
      return { deed: 'air' };
    case 'KeyW':
      return { deed: 'model' };
    case 'KeyP':
      return { deed: 'projector' };
    case 'KeyI':
      return { deed: 'invert' };
    default:
      return null;
  }
}

/** Saving and opening go by the letter, too, and even in a text field: the browser would save the page instead. */
function fileChord(event: KeyboardEvent): KeyDeed | null {
  if (!(event.ctrlKey || event.metaKey) || event.shiftKey) return null;
  const letter = event.key.toLowerCase();
  return letter === 's' ? { deed: 'save' } : letter === 'o' ? { deed: 'open' } : null;
}

/** Undo and redo go by the letter, as everywhere: Ctrl or Command with Z, with Shift and Z, with Y. */
function chordDeed(event: KeyboardEvent): KeyDeed | null {
  const letter = event.key.toLowerCase();
  if (letter === 'z') return { deed: event.shiftKey ? 'redo' : 'undo' };
  return letter === 'y' && !event.shiftKey ? { deed: 'redo' } : null;
}
