import { expect, type Locator, type Page } from '@playwright/test';
import { dropFile } from './page-give-file.js';
import { standsStill } from './page-still.js';
import { DEMO_BENCH, OWN_BENCH } from './page-own-bench.js';

/** The page's parts by what they are called on the screen, and what a user does with them. */
export class BenchPage {
  readonly stage: Locator;
  readonly shelf: Locator;
  readonly strip: Locator;
  /** What a screen reader is told when another mount is heard. */
  readonly spoken: Locator;

  #afresh = 0;

  /**
   * @param returning whether the page finds a bench of one's own in the browser's store
   * @param left that bench
   */
  constructor(
    readonly page: Page,
    readonly returning = true,
    readonly left = OWN_BENCH
  ) {
    this.stage = page.locator('section.stage');
    this.shelf = page.getByRole('region', { name: 'On the shelf' });
    this.strip = page.getByRole('banner');
    this.spoken = page.locator('p.hidden[role="status"]');
  }

  /** Opens the page and waits until it is alive: one's own bench is there, or the first sound of the demo bench. */
  async open(address = './'): Promise<void> {
    await this.page.goto(address);
    await expect(this.stands).toHaveCount(4);
    if (this.returning) await expect(this.line).toHaveAttribute('data-kept', 'kept');
    else await this.measured();
  }

  /**
   * Puts the bench on the page as it was at first, or another one, by a file that is let go over it: silent, nothing unfolded,
   * nothing in hand.
   */
  async afresh(bench = this.returning ? this.left : DEMO_BENCH): Promise<void> {
    const name = `fresh ${++this.#afresh}`;
    const open = this.page.locator('dialog[open], :popover-open');
    while ((await open.count()) > 0) {
      const before = await open.count();
      await this.page.keyboard.press('Escape');
      await expect.poll(() => open.count()).toBeLessThan(before);
    }
    const projector = this.page.getByRole('main', { name: 'Projector view' });
    if (await projector.isVisible()) await this.page.keyboard.press('Escape');
    await expect(projector).toHaveCount(0);
    if ((await this.playButton.getAttribute('aria-label')) === 'Stop') await this.playButton.click();
    await this.page.mouse.move(0, 0);
    await this.page.evaluate(() => {
      if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
      for (const one of document.querySelectorAll('details')) one.open = false;
      scrollTo(0, 0);
    });
    await dropFile(this.page, {
      name: `${name}.backwave.json`,
      head: Buffer.from(bench).toString('base64')
    });
    await expect(this.line).toContainText(name);
    await expect(this.stage.locator('header .disc')).toHaveText('1');
  }

  /** The line that says which bench this is and whether it is kept. */
  get line(): Locator {
    return this.page.locator('[data-kept]');
  }

  /** Waits until the sound there is has been measured behind every mount that can be built. */
  async measured(): Promise<void> {
    await this.atRest();
    await expect(this.page.getByText('listening …')).toHaveCount(0);
  }

  /** What the shelf says once it has come to rest: levels of the last sound stay until those of the next are measured. */
  async atRest(): Promise<string> {
    // On a phone it may be folded away.
    const list = this.page.locator('.shelf ol');
    await expect(list).toHaveAttribute('aria-busy', 'false', { timeout: 60_000 });
    return list.innerText();
  }

  get stands(): Locator {
    return this.page.locator('.shelf ol > li');
  }

  /** The stand on the shelf with this numeral. */
  stand(numeral: number): Locator {
    return this.stands.nth(numeral - 1);
  }

  /** Takes a sound of this name out of the drawer. */
  async choose(name: string): Promise<void> {
    await this.page.getByRole('button', { name: 'another sound' }).click();
    const drawer = this.page.getByRole('dialog', { name: 'The sounds there are' });
    await drawer
      .locator('li button')
      .filter({ has: this.page.getByText(name, { exact: true }) })
      .click();
    await expect(drawer).toBeHidden();
    await expect(this.soundName).toHaveText(name);
  }

  /** Hears a mount by its numeral key, on the page and in no field. */
  async hear(numeral: number): Promise<void> {
    await this.page.keyboard.press(`Digit${numeral}`);
    await expect(this.stage.locator('header .disc')).toHaveText(String(numeral));
  }

  /** Waits until the mount that has just been chosen has slid in: its handles stand still. */
  async settled(): Promise<void> {
    await standsStill(this.page, '.stage .main g.handle');
  }

  /** Which speaker the heard mount has. */
  get speakerChoice(): Locator {
    return this.stage.getByRole('combobox', { name: 'speaker' });
  }

  /** Gives the heard mount another speaker, and leaves the field; with `everywhere` all of them. */
  async giveSpeaker(key: string, { everywhere = false } = {}): Promise<void> {
    await this.speakerChoice.selectOption(key);
    await this.speakerChoice.blur();
    const all = this.stage.getByRole('button', { name: 'this one in all mounts' });
    if (everywhere && (await all.isVisible())) await all.click();
    await this.page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  }

  /** The screen of the speaker. */
  get speaker(): Locator {
    return this.page.getByRole('dialog', { name: 'The speaker' });
  }

  /** What opens it, at the stage. */
  get speakerOpener(): Locator {
    return this.stage.getByRole('button', { name: /^its values/ });
  }

  /** Opens the speaker's screen, which is fetched when it is asked for first, on one of its parts. */
  async openSpeaker(part = 'drawing'): Promise<void> {
    await this.speakerOpener.click();
    await this.speaker.getByRole('tab', { name: part }).click();
    await expect(this.speaker.getByRole('tabpanel', { name: part })).toBeVisible();
  }

  /** Types a figure of the speaker on its screen and enters it. */
  async typeFigure(name: string | RegExp, figure: string): Promise<void> {
    const field = this.speaker.getByRole('textbox', { name });
    await field.fill(figure);
    await field.press('Enter');
  }

  get playButton(): Locator {
    return this.page.locator('button.play');
  }

  /** Closes a dialog by Escape, and lets the browser give the focus back: it does so with its next picture. */
  async escape(): Promise<void> {
    await this.page.keyboard.press('Escape');
    await expect(this.page.getByRole('dialog')).toHaveCount(0);
    await this.drawn();
  }

  /**
   * Waits until the page has drawn what was done last: two pictures and a task later, as what can wait comes a task after
   * the hand. Whoever looks whether nothing has changed looks after this.
   */
  async drawn(): Promise<void> {
    await this.page.evaluate(
      () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done))))
    );
  }

  /** Starts the sound; the first time through the ear check. */
  async play(): Promise<void> {
    await this.playButton.click();
    const ready = this.page.getByRole('button', { name: 'I am ready: play' });
    await expect(ready.or(this.page.locator('button.play[aria-label="Stop"]'))).toBeVisible();
    if (await ready.isVisible()) await ready.click();
    await expect(this.playButton).toHaveAttribute('aria-label', 'Stop');
  }

  /** The field of a size on the stage. */
  field(label: string): Locator {
    return this.stage.getByRole('textbox', { name: label, exact: true });
  }

  /** The knob around that field: its buttons, its sentence. */
  knob(label: string): Locator {
    return this.stage.locator('.knob').filter({ has: this.page.getByText(label, { exact: true }) });
  }

  /** Types into a field as a user does, and leaves it. */
  async type(label: string, text: string): Promise<void> {
    const field = this.field(label);
    await field.fill(text);
    await field.press('Enter');
  }

  /** The first handle on the stage that turns a size. */
  handle(name: string): Locator {
    return this.stage.getByRole('slider', { name });
  }

  /** Drags from the middle of something by so many pixels, in steps as a hand does. */
  async drag(what: Locator, dx: number, dy: number, steps = 6): Promise<void> {
    const box = (await what.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await this.page.mouse.move(x, y);
    await this.page.mouse.down();
    await this.page.mouse.move(x + dx, y + dy, { steps });
    await this.page.mouse.up();
  }

  /** Everything of the bench that could be changed by mistake, as it is written on the screen. */
  async written(): Promise<string[]> {
    const fields = await this.stage
      .getByRole('textbox')
      .evaluateAll((all) => all.map((field) => (field as HTMLInputElement).value));
    return [...(await this.shelf.locator('ol > li').allInnerTexts()), ...fields];
  }

  /** The level of a stand against the one measured against, as it is written; null while it is measured. */
  async level(numeral: number): Promise<number | null> {
    const text = await this.stand(numeral).locator('.level').innerText();
    if (/just as loud/.test(text)) return 0;
    const match = /(\d+) dB (louder|quieter)/.exec(text);
    return match ? Number(match[1]) * (match[2] === 'louder' ? 1 : -1) : null;
  }

  /** Path of the heard mount's curve. */
  curve(): Promise<string[]> {
    return this.page
      .locator('.response-picture path')
      .evaluateAll((all) => all.map((path) => path.getAttribute('d') ?? ''));
  }

  /** The file input behind "your own recording". */
  get picker(): Locator {
    return this.page.getByTestId('recording');
  }

  /** The sentence beside the sound. */
  get recordingProblem(): Locator {
    return this.page.locator('.sound .problem');
  }

  get soundName(): Locator {
    return this.page.locator('.sound .name');
  }
}
