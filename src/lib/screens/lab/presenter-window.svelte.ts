/** What the presenter is told where the browser opens no window of its own accord. */
const REFUSED =
  'The browser has not opened the presenter’s window. Allow this page to open windows, then ask for it again.';

/**
 * The second window, for the presenter alone: an empty page of this one, which what it shows is put into. Its keys are the lab's.
 */
export class PresenterWindow {
  current = $state.raw<Window | null>(null);
  /** One sentence where it could not be opened. */
  problem = $state<string | null>(null);

  /** Whom a key that is pressed in it is handed to. */
  onKey: (event: KeyboardEvent) => void = () => undefined;

  #open: () => Window | null;

  constructor(open = () => window.open('', '', 'popup,width=760,height=620')) {
    this.#open = open;
  }

  /** Opens it, or brings it to the front. Must be called from a click or a key. */
  open(): void {
    this.problem = null;
    if (this.current) return this.current.focus();
    const opened = this.#open();
    if (!opened) {
      this.problem = REFUSED;
      return;
    }
    this.current = opened;
    opened.addEventListener('keydown', (event) => this.onKey(event));
    opened.addEventListener('pagehide', () => (this.current = null));
  }

  close(): void {
    this.current?.close();
    this.current = null;
  }
}
