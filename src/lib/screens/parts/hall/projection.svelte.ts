import type { Seconds } from '../../../units.js';
import { ScreenWake, type ScreenLocks } from './screen-wake.js';

/** A note is read in this time. */
const NOTED: Seconds = 8;

/**
 * The projector view: whether it is shown, on dark or on light, and what the browser gives it. Fullscreen and a screen that
 * stays awake are asked for on entering; where the browser has neither, the view fills the window all the same.
 */
export class Projection {
  open = $state(false);
  /** Light on dark: for a hall that can be darkened. */
  inverted = $state(false);
  /** The waves in the air in place of the curves. */
  air = $state(false);
  fullscreen = $state(false);
  /** What the presenter is told: what the browser would not give, or which key was meant. It goes by itself. */
  note = $state<string | null>(null);

  #going: ReturnType<typeof setTimeout> | undefined;
  #page: Document | null = null;
  #wake: ScreenWake | null = null;

  /** Takes hold of the browser's page, and follows its own way out of fullscreen. Returns what lets go of it. */
  connect(page: Document, locks: ScreenLocks | undefined): () => void {
    const wake = new ScreenWake(page, locks);
    const changed = (): void => {
      this.fullscreen = Boolean(page.fullscreenElement);
    };
    [this.#page, this.#wake] = [page, wake];
    page.addEventListener('fullscreenchange', changed);
    return () => {
      page.removeEventListener('fullscreenchange', changed);
      void wake.release();
    };
  }

  /** Shows the view; where a key or a click asked for it, it may fill the screen. */
  async enter({ fullscreen = true }: { fullscreen?: boolean } = {}): Promise<void> {
    if (this.open) return;
    this.open = true;
    this.say(null);
    await Promise.all([this.#wake?.keep(), fullscreen && this.#fill()]);
  }

  async leave(): Promise<void> {
    if (!this.open) return;
    this.open = false;
    this.say(null);
    await Promise.all([this.#wake?.release(), this.#unfill()]);
  }

  toggle(): Promise<void> {
    return this.open ? this.leave() : this.enter();
  }

  /** Tells the presenter something for a while. */
  say(note: string | null): void {
    clearTimeout(this.#going);
    this.note = note;
    if (note !== null) this.#going = setTimeout(() => (this.note = null), NOTED * 1000);
  }

  invert(): void {
    if (this.open) this.inverted = !this.inverted;
  }

  /** Into fullscreen and back, as asked for; says what is not to be had. Leaving it does not leave the view. */
  async toggleFullscreen(): Promise<void> {
    this.say(null);
    if (this.#page?.fullscreenElement) return this.#unfill();
    const said: string[] = [];
    if (!(await this.#fill())) said.push('No fullscreen here: the view fills the window.');
    if (!this.#wake?.held) said.push('The screen may go dark by itself.');
    this.say(said.join(' ') || null);
  }

  /** Whether the screen is filled now. */
  async #fill(): Promise<boolean> {
    if (!this.#page) return false;
    try {
      await this.#page.documentElement.requestFullscreen({ navigationUI: 'hide' });
      // Who left in the meantime does not want it any more.
      if (!this.open) await this.#unfill();
      return true;
    } catch {
      return false;
    }
  }

  async #unfill(): Promise<void> {
    if (!this.#page?.fullscreenElement) return;
    await this.#page.exitFullscreen().catch(() => undefined);
  }
}
