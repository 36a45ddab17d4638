import { tick } from 'svelte';
import { prefersReducedMotion } from 'svelte/motion';
import type { PageAround } from './command.js';

/** The page that the lab stands on. */
export const pageAround: PageAround = {
  get still() {
    return prefersReducedMotion.current;
  },
  get dialogOpen() {
    return document.querySelector('dialog[open]') !== null;
  },
  leaveField() {
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  },
  showAir() {
    // The pictures come a task after the model.
    void tick().then(() => setTimeout(() => bringToTop(document.getElementById('air-around'))));
  }
};

/** Where what is to be seen is not there yet, the page below it is too short for that: it is done once more when it has come. */
function bringToTop(place: HTMLElement | null): void {
  if (!place) return;
  place.scrollIntoView({ block: 'start' });
  if (place.childElementCount > 0) return;
  const come = new MutationObserver(() => {
    if (place.childElementCount === 0) return;
    come.disconnect();
    place.scrollIntoView({ block: 'start' });
  });
  come.observe(place, { childList: true });
}
