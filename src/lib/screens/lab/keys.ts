import type { Command, Where } from './command.js';
import { COMMANDS } from './commands.js';
import { isPressed } from './keystroke.js';

/** How the lab stands when a key is pressed. */
export interface Situation {
  /** The projector view is shown. */
  hall: boolean;
  /** The script runs in it. */
  run: boolean;
  /** Blind trials have the page for themselves. */
  trials: boolean;
  /** So has a hall vote. */
  vote: boolean;
  /** A dialog is open. */
  dialog: boolean;
  /** Single keys do something (WCAG 2.1.4); chords do always. */
  singleKeys: boolean;
}

/** The command that a key press asks for; null where the key belongs to something else. */
export function commandFor(
  event: KeyboardEvent,
  { hall, run, trials, vote, dialog, singleKeys }: Situation
): Command | null {
  if (event.defaultPrevented || event.altKey) return null;
  const place: Where = trials ? 'trials' : vote ? 'vote' : run ? 'run' : hall ? 'hall' : 'bench';
  const isOf = (of: Where) => (command: Command) => [command.where ?? []].flat().includes(of);
  const here = [
    ...COMMANDS.filter(isOf(place)),
    ...(place === 'run' ? COMMANDS.filter(isOf('hall')) : []),
    ...COMMANDS.filter(({ where, blind }) => !where && (!(trials || vote) || blind))
  ];
  // A sign comes before a place: where it stands on another's key, it is the sign that was meant.
  const command =
    here.find(({ keys }) => keys.some((key) => !('place' in key) && isPressed(key, event))) ??
    here.find(({ keys }) => keys.some((key) => isPressed(key, event)));
  if (!command) return null;
  if (!command.inText && keepsKey(event.target, event.code)) return null;
  // An open dialog has the first right to Escape, wherever the focus is.
  if (dialog && event.key === 'Escape') return null;
  const single = !(event.ctrlKey || event.metaKey);
  return single && !singleKeys && !command.always ? null : command;
}

const SCROLLING = /^(?:Arrow|Page|Space)/;

/** Whether an element needs the key for itself: a text field; for Space and Enter also what they press. */
function keepsKey(focused: EventTarget | null, code: string): boolean {
  // By what it can do: an element of the presenter's window is of that window's own kind.
  if (!focused || !('closest' in focused)) return false;
  const target = focused as Element;
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
