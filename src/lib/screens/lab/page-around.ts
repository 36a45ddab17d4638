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
    void tick().then(() =>
      setTimeout(() => document.getElementById('air-around')?.scrollIntoView({ block: 'start' }))
    );
  }
};
