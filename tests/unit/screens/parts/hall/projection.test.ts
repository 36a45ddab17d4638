import { describe, expect, it } from 'vitest';
import { Projection } from '../../../../../src/lib/screens/parts/hall/projection.svelte.js';

/** A page that fills the screen when it is let. */
class Page extends EventTarget {
  visibilityState = 'visible';
  fullscreenElement: object | null = null;
  asked = 0;
  allows: boolean;
  documentElement = {
    requestFullscreen: async (): Promise<void> => {
      this.asked++;
      if (!this.allows) throw new TypeError('refused');
      this.#to(this.documentElement);
    }
  };
  constructor(allows: boolean) {
    super();
    this.allows = allows;
  }
  exitFullscreen = async (): Promise<void> => this.#to(null);
  #to(element: object | null): void {
    this.fullscreenElement = element;
    this.dispatchEvent(new Event('fullscreenchange'));
  }
}

function projection(allows: boolean): { page: Page; view: Projection; end: () => void } {
  const page = new Page(allows);
  const view = new Projection();
  return { page, view, end: view.connect(page as unknown as Document, undefined) };
}

describe('Projection', () => {
  it('fills the screen on entering and gives it back on leaving', async () => {
    const { page, view } = projection(true);
    await view.toggle();
    expect([view.open, view.fullscreen, page.asked]).toEqual([true, true, 1]);
    await view.toggle();
    expect([view.open, view.fullscreen]).toEqual([false, false]);
  });

  it('stays when fullscreen is left in the browser’s own way, and when it is refused', async () => {
    const { page, view } = projection(true);
    await view.enter();
    await page.exitFullscreen();
    expect([view.open, view.fullscreen]).toEqual([true, false]);
    const refused = projection(false);
    await refused.view.enter();
    expect([refused.view.open, refused.view.fullscreen, refused.view.note]).toEqual([true, false, null]);
  });

  it('says what is not to be had only to one who asks, and forgets it on leaving', async () => {
    const { view } = projection(false);
    await view.enter();
    await view.toggleFullscreen();
    expect(view.note).toBe(
      'No fullscreen here: the view fills the window. The screen may go dark by itself.'
    );
    await view.leave();
    expect(view.note).toBeNull();
  });

  it('asks for no fullscreen where no key or click asked for the view', async () => {
    const { page, view } = projection(true);
    await view.enter({ fullscreen: false });
    expect([view.open, page.asked]).toEqual([true, 0]);
  });

  it('inverts only while it is shown', async () => {
    const { view } = projection(true);
    view.invert();
    expect(view.inverted).toBe(false);
    await view.enter();
    view.invert();
    expect(view.inverted).toBe(true);
  });

  it('follows the page no more once it has let go of it', async () => {
    const { page, view, end } = projection(true);
    await view.enter();
    end();
    await page.exitFullscreen();
    expect(view.fullscreen).toBe(true);
  });
});
