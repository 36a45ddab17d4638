import type { Parts } from './command.js';
import { commandFor } from './keys.js';

/** Does what the keys ask for. */
export class Keyboard {
  /** Whether single keys do anything at all (WCAG 2.1.4). */
  singleKeys = $state(true);

  #parts: Parts;

  constructor(parts: Parts) {
    this.#parts = parts;
  }

  press(event: KeyboardEvent): void {
    const { projection, page, growth, trials, votes, script } = this.#parts;
    const command = commandFor(event, {
      hall: projection.open,
      run: script.running,
      trials: trials.shown,
      vote: votes.shown,
      dialog: page.dialogOpen,
      singleKeys: this.singleKeys
    });
    if (!command) return;
    event.preventDefault();
    // A key that is held down turns and steps on; it does not play and stop in turns.
    if (event.repeat && !command.held) return;
    if (!command.letsGrow) growth.stop();
    command.deed(this.#parts);
  }
}
